using Foreshore.Guide.Database;
using Foreshore.Guide.Members;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using NodaTime;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// Links that make accounts, for whoever runs the program: one for the first admin at each start while there is none, and one of any
/// role where <c>Members:Link</c> or the verb asks for it. There is no password as shipped.
/// </summary>
internal sealed class LinkPrinter(SiteAddress address, Role? asked)
{
    private const string Setting = "Members:Link";
    private readonly List<(string Words, string Path)> links = [];

    public static LinkPrinter From(IConfiguration settings) => new(SiteAddress.From(settings),
        settings["Members:Link"] is { Length: > 0 } role ? RoleNamed(role) : null);

    /// <summary>Before the site answers, so that no link is printed that does not work yet.</summary>
    public async Task PrepareAsync(IServiceProvider services)
    {
        var invitations = services.GetRequiredService<Invitations>();
        if (await invitations.ForFirstAdminAsync() is { } first)
            links.Add(("There is no admin yet. This link makes one; it works once, for a day, until the next start", Invitations.PathOf(first)));
        if (asked is { } role)
            await AddAsync(invitations, role);
    }

    public void Print(string served) => links.ForEach(link => Console.WriteLine($"{link.Words}:\n  {address.Of(link.Path, served)}"));

    /// <summary>The verb: for a site that serves already, or will.</summary>
    public static async Task PrintAsync(string name, IConfiguration settings)
    {
        var role = RoleNamed(name);
        var printer = new LinkPrinter(SiteAddress.From(settings), role);
        await using var server = await GuideServer.OpenAsync(settings);
        if (server.IsEmbedded)
            await server.MigrateAsync();
        await using var services = new ServiceCollection().AddGuideDatabase(server.AppConnection).AddSingleton<IClock>(SystemClock.Instance)
            .AddSingleton<Invitations>().AddSingleton(new Passwords(new PasswordHasher<Member>(Options.Create(new PasswordHasherOptions())))).BuildServiceProvider();
        await printer.AddAsync(services.GetRequiredService<Invitations>(), role);
        printer.Print(settings["urls"]?.Split(';')[0] ?? "http://localhost:5080");
    }

    private async Task AddAsync(Invitations invitations, Role role) =>
        links.Add(($"A link for one {role.Words()}; it works once, for a day", Invitations.PathOf(await invitations.PrintAsync(role))));

    private static Role RoleNamed(string role) => role.Trim().ToLowerInvariant() switch
    {
        "member" => Role.Member,
        "warden" => Role.Warden,
        "admin" => Role.Admin,
        _ => throw new SettingException(Setting, $"\"{role}\" is no role", "Write member, warden or admin, like --link warden."),
    };
}
