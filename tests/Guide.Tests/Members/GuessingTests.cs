using System.Net;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>A site that takes each visitor's address from a header of the tests: the test server itself has none.</summary>
public abstract class AddressedHost(TestCluster cluster, bool withDemo) : GuideHost(cluster, withDemo)
{
    public const string Header = "Test-From";

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.ConfigureServices(services => services.AddSingleton<IStartupFilter, FromHeader>());
    }

    private sealed class FromHeader : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((http, rest) =>
            {
                http.Connection.RemoteIpAddress = IPAddress.Parse(http.Request.Headers[Header].ToString() is { Length: > 0 } from ? from : "192.0.2.200");
                return rest(http);
            });
            next(app);
        };
    }
}

public sealed class AddressedGuide(TestCluster cluster) : AddressedHost(cluster, withDemo: false);

/// <summary>Somebody guesses at another's account: the guesser waits, the owner does not.</summary>
public class GuessingTests(AddressedGuide guide) : IClassFixture<AddressedGuide>
{
    [Fact]
    public async Task Five_wrong_tries_hold_up_the_network_they_came_from_and_not_the_owner()
    {
        using var owner = new Person(guide);
        await owner.JoinAsync("mona@example.org");
        using var guesser = new Person(guide, "198.51.100.7");
        for (var i = 0; i < SignInLimits.MostPerAccount; i++)
            Assert.Equal(HttpStatusCode.BadRequest, (await guesser.SignInAsync("mona@example.org", $"wrong {i}")).StatusCode);

        var refused = await guesser.SignInAsync("mona@example.org");
        Assert.Equal((HttpStatusCode.TooManyRequests, SignInLimits.AccountWindow.ToTimeSpan()), (refused.StatusCode, refused.Headers.RetryAfter!.Delta));
        using var neighbour = new Person(guide, "198.51.100.250");
        Assert.Equal(HttpStatusCode.TooManyRequests, (await neighbour.SignInAsync("mona@example.org")).StatusCode);

        using var elsewhere = new Person(guide, "203.0.113.5");
        Assert.Equal(HttpStatusCode.Redirect, (await elsewhere.SignInAsync("mona@example.org")).StatusCode);
    }

    [Fact]
    public async Task Tries_from_many_networks_hold_up_strange_devices_alone_and_the_owner_is_told_once()
    {
        using var known = new Person(guide, "203.0.113.20");
        await known.JoinAsync("nora@example.org");
        Assert.Equal(HttpStatusCode.Redirect, (await known.SignInAsync("nora@example.org")).StatusCode);
        await GuessFromEverywhereAsync("nora@example.org");

        using var strange = new Person(guide, "203.0.113.21");
        var held = await strange.SignInAsync("nora@example.org");
        Assert.Equal(HttpStatusCode.TooManyRequests, held.StatusCode);
        Assert.InRange(held.Headers.RetryAfter!.Delta!.Value, TimeSpan.FromSeconds(1), SignInLimits.AnywhereWindow.ToTimeSpan());
        Assert.Contains("a device you have signed in on before", (await Person.DocumentAsync(held)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await strange.SignInAsync("nora@example.org")).StatusCode);

        // The device it was on goes in, also from a network that is held up; a passkey is counted by its machine alone.
        var moved = known.MovedTo("198.51.1.9");
        Assert.Equal(HttpStatusCode.Redirect, (await moved.SignInAsync("nora@example.org")).StatusCode);
        Assert.Null(await guide.Services.GetRequiredService<SignInLimits>().CountAsync(SignInTry.Of(IPAddress.Parse("203.0.113.22"), account: null), default));
        var account = await moved.ReadAsync("/account");
        Assert.Contains($"{SignInLimits.MostFromAnywhere - 1} tries to sign in to your account were refused", account.QuerySelector("#sessions")!.TextContent, StringComparison.Ordinal);
        await using var db = guide.Open();
        var nora = await db.Members.SingleAsync(m => m.Email == "nora@example.org");
        Assert.Equal(1, await db.AuditEntries.CountAsync(e => e.Act == Act.SignInHeldUp && e.About == nora.Id));
    }

    [Fact]
    public async Task A_known_device_counts_its_own_wrong_tries()
    {
        using var known = new Person(guide, "203.0.113.30");
        await known.JoinAsync("olga@example.org");
        await known.SignInAsync("olga@example.org");
        for (var i = 0; i < SignInLimits.MostPerAccount; i++)
            Assert.Equal(HttpStatusCode.BadRequest, (await known.SignInAsync("olga@example.org", $"wrong {i}")).StatusCode);

        Assert.Equal(HttpStatusCode.TooManyRequests, (await known.SignInAsync("olga@example.org")).StatusCode);
        // What it is known for is one account: for another it is a stranger.
        Assert.Equal(HttpStatusCode.BadRequest, (await known.SignInAsync("somebody@example.org")).StatusCode);
    }

    [Fact]
    public async Task A_clock_that_was_ahead_holds_nobody_up_for_longer_than_the_wait()
    {
        using var owner = new Person(guide, "203.0.113.40");
        await owner.JoinAsync("pia@example.org");
        using var guesser = new Person(guide, "203.0.113.41");
        var right = guide.Clock.GetCurrentInstant();
        guide.Clock.Reset(right + Duration.FromDays(400));
        for (var i = 0; i < SignInLimits.MostPerAccount; i++)
            await guesser.SignInAsync("pia@example.org", $"wrong {i}");
        guide.Clock.Reset(right);

        var refused = await guesser.SignInAsync("pia@example.org");
        Assert.Equal(SignInLimits.AccountWindow.ToTimeSpan(), refused.Headers.RetryAfter!.Delta);
        guide.Clock.Reset(right + SignInLimits.AccountWindow);
        Assert.Equal(HttpStatusCode.Redirect, (await guesser.SignInAsync("pia@example.org")).StatusCode);
    }

    private async Task GuessFromEverywhereAsync(string email)
    {
        for (var i = 0; i < SignInLimits.MostFromAnywhere; i++)
        {
            using var guesser = new Person(guide, $"198.51.{i}.9");
            // One of them is the owner's own first sign-in.
            var expected = i < SignInLimits.MostFromAnywhere - 1 ? HttpStatusCode.BadRequest : HttpStatusCode.TooManyRequests;
            Assert.Equal(expected, (await guesser.SignInAsync(email, "wrong")).StatusCode);
        }
    }
}
