using System.Data.Common;
using System.Net;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Shell;

/// <summary>Class fixture: a site whose disk is full, where posts are put down and where the database writes.</summary>
public sealed class SiteWithFullDisk(TestCluster cluster) : GuideHost(cluster, withDemo: true)
{
    /// <summary>Where it ends: in the folder for posts, else in the database.</summary>
    public bool IsFullForPosts { get; set; }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.ConfigureServices(services => services
            .AddSingleton<IStartupFilter>(new PutDown(this))
            .AddSingleton<IInterceptor>(new FullDatabase()));
    }

    private sealed class PutDown(SiteWithFullDisk site) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((http, then) =>
            {
                if (site.IsFullForPosts && HttpMethods.IsPost(http.Request.Method))
                    http.Request.Body = new FullStream();
                return then(http);
            });
            next(app);
        };
    }

    /// <summary>As the runtime tells of error 28 of Linux.</summary>
    private sealed class FullStream : MemoryStream
    {
        public override int Read(byte[] buffer, int offset, int count) => throw new IOException("No space left on device", 28);

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => throw new IOException("No space left on device", 28);
    }

    private sealed class FullDatabase : DbCommandInterceptor
    {
        public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
            DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default) =>
            command.CommandText.Contains("INSERT INTO proposals", StringComparison.Ordinal)
                ? throw new PostgresException("could not extend file", "ERROR", "ERROR", PostgresErrorCodes.DiskFull) : ValueTask.FromResult(result);
    }
}

public sealed class FullDiskTests(SiteWithFullDisk site) : IClassFixture<SiteWithFullDisk>
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_full_disk_is_said_to_be_one(bool isFullForPosts)
    {
        using var person = new Person(site);
        await person.BecomeAsync(Role.Member);
        var draft = $"/contribute/stance/{Guid.NewGuid()}";
        var form = await person.ReadAsync(draft);
        site.IsFullForPosts = isFullForPosts;

        var answer = await person.AnswerAsync(draft, form, "stance", ("f.summary", "Iron ring"), ("then", "keep"));

        site.IsFullForPosts = false;
        var text = await answer.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.InsufficientStorage, answer.StatusCode);
        Assert.Contains("The disk of this site is full", text, StringComparison.Ordinal);
        Assert.DoesNotContain("the sign of the page", text, StringComparison.Ordinal);
    }
}
