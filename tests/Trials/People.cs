using System.Globalization;
using System.Security.Claims;
using System.Text.Json;
using Foreshore.Guide.Database;
using Foreshore.Guide.Members;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace Foreshore.Trials;

/// <summary>
/// Members who are signed in, without the way through sign-in: member and session go straight into the database, and the cookie is
/// sealed with the site's own keys, as the framework's cookie handler seals it.
/// </summary>
internal sealed class People(SiteProcess site)
{
    private const string CookieHandler = "Microsoft.AspNetCore.Authentication.Cookies.CookieAuthenticationMiddleware";

    /// <summary>The site's role by its socket, with the password that lies beside the data.</summary>
    public string Connection
    {
        get
        {
            if (site.Connection is { } given)
                return given;
            var passwords = JsonDocument.Parse(File.ReadAllText(Directory.GetFiles(site.Data, "*.passwords").Single())).RootElement;
            var socket = File.ReadLines(Path.Combine(site.Cluster, "postmaster.pid")).ElementAt(4);
            return new NpgsqlConnectionStringBuilder
            {
                Host = socket,
                Database = "foreshore",
                Username = DatabaseRoles.App,
                Password = passwords.GetProperty("App").GetString(),
                Pooling = false,
                Timeout = 5,
            }.ConnectionString;
        }
    }

    /// <summary>A new member's cookie; tried again while the database is away, null where all was over before it came back.</summary>
    public async Task<string?> CookieAsync(Role role, CancellationToken enough)
    {
        while (!enough.IsCancellationRequested)
        {
            try
            {
                return await SignInAsync(role);
            }
            catch (Exception fault) when (fault is NpgsqlException or DbUpdateException or InvalidOperationException or IOException)
            {
                await Task.Delay(200, CancellationToken.None);
            }
        }

        return null;
    }

    private async Task<string> SignInAsync(Role role)
    {
        await using var services = new ServiceCollection().AddLogging().AddGuideDatabase(Connection).AddKeyRing().BuildServiceProvider();
        var now = NodaTime.SystemClock.Instance.GetCurrentInstant();
        var number = Guid.NewGuid();
        var member = new Member(string.Create(CultureInfo.InvariantCulture, $"{number:N}@example.org"), "A member", role, now);
        var session = new MemberSession(member.Id, 2, "password and code", "a trial", now);
        await using var db = GuideConnection.Open(Connection);
        db.AddRange(member, session);
        await db.SaveChangesAsync();
        var seal = services.GetRequiredService<IDataProtectionProvider>().CreateProtector(CookieHandler, Sessions.Scheme, "v2");
        var who = new ClaimsPrincipal(new ClaimsIdentity([new Claim(Sessions.SessionClaim, session.Id.ToString())], Sessions.Scheme));
        return new TicketDataFormat(seal).Protect(new AuthenticationTicket(who, Sessions.Scheme));
    }
}
