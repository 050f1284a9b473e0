using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>A site whose refusals are kept for the test to read.</summary>
public sealed class LoggedGuide(TestCluster cluster) : GuideHost(cluster, withDemo: false)
{
    public ConcurrentQueue<string> Lines { get; } = new();

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.ConfigureServices(services => services.AddSingleton<ILoggerProvider>(new Refusals(Lines)));
    }

    private sealed class Refusals(ConcurrentQueue<string> lines) : ILoggerProvider
    {
        public ILogger CreateLogger(string categoryName) => new One(categoryName, lines);

        public void Dispose() { }

        private sealed class One(string category, ConcurrentQueue<string> lines) : ILogger
        {
            public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

            public bool IsEnabled(LogLevel logLevel) => category.EndsWith(nameof(RefusalLog), StringComparison.Ordinal);

            public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
            {
                if (IsEnabled(logLevel))
                    lines.Enqueue(formatter(state, exception));
            }
        }
    }
}

public class RefusalLogTests(LoggedGuide guide) : IClassFixture<LoggedGuide>
{
    [Fact]
    public async Task What_is_refused_is_written_down_and_what_was_sent_is_not()
    {
        guide.Clock.Advance(Duration.FromSeconds(2));
        guide.Lines.Clear();
        using var member = guide.CreateClient(new() { AllowAutoRedirect = false });
        var id = await guide.SignInAsync(member, Role.Member);
        Assert.Equal(HttpStatusCode.Forbidden, (await member.GetAsync("/admin/log")).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await guide.Client.PostAsync("/sign-in", new FormUrlEncodedContent([new("Form.Password", "a secret word")]))).StatusCode);

        Assert.Equal([$"Refused with 403: GET /admin/log by member {id}", "Refused with 400: POST /sign-in by a visitor"], guide.Lines);
    }

    [Fact]
    public async Task A_flood_of_refusals_is_counted_and_not_written_out()
    {
        guide.Clock.Advance(Duration.FromSeconds(2));
        guide.Lines.Clear();
        for (var i = 0; i < 25; i++)
            await guide.Client.PostAsync("/sign-in", new FormUrlEncodedContent([]));
        Assert.Equal(10, guide.Lines.Count);

        guide.Clock.Advance(Duration.FromSeconds(1));
        await guide.Client.PostAsync("/sign-in", new FormUrlEncodedContent([]));
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{15} refusals before it were not written down"), guide.Lines.Last());
    }
}
