using System.Globalization;
using System.Threading.Channels;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Elevation;

/// <summary>Computes skylines one after the other while the site answers; a row in the database tells how far each is.</summary>
internal sealed partial class SkylineQueue(IDbContextFactory<GuideDb> database, IClock clock, ILogger<SkylineQueue> log) : BackgroundService
{
    // Each takes some tens of megabytes while it is read.
    private const int MostFiles = 9;

    /// <summary>A skyline of which less than a twentieth is known is worth less than the one it would replace: mine.</summary>
    private const double MostUnknown = 0.95;

    /// <summary>So far the heights of the shuttle's radar may be off, metres, nine times in ten (the mission's specification; from memory).</summary>
    private const double MostUnderGround = 16;

    private readonly Channel<int> waiting = Channel.CreateUnbounded<int>();

    /// <summary>Asks for a skyline; where one is asked for already, nothing is added.</summary>
    public async Task AskAsync(SignedIn warden, int vantagePointId, bool outsideIsSea, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var now = clock.GetCurrentInstant();
        if (await db.AddSkylineJobAsync(new SkylineJob(vantagePointId, outsideIsSea, now), cancel) is not { } id)
            return;
        // The job is one statement of its own; what is logged has to be saved besides.
        db.Add(new AuditEntry(Act.SkylineAsked, now, warden.MemberId, words: await db.VantagePoints.Where(v => v.Id == vantagePointId).Select(v => v.Name).SingleAsync(cancel)));
        await db.SaveChangesAsync(cancel);
        waiting.Writer.TryWrite(id);
    }

    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        try
        {
            await SweepAsync(cancellationToken);
        }
        catch (Exception away) when (away is not OperationCanceledException)
        {
            // The site starts without its database and says so on every page.
            NotSwept(log, away);
        }

        await base.StartAsync(cancellationToken);
    }

    /// <summary>What an earlier run of the site left open is told as not done: nobody works on it any more.</summary>
    internal async Task SweepAsync(CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.SkylineJobs.Where(j => j.State == SkylineJobState.Waiting || j.State == SkylineJobState.Running)
            .ExecuteUpdateAsync(set => set.SetProperty(j => j.State, SkylineJobState.Failed).SetProperty(j => j.Outcome, SkylineJob.Interrupted), cancel);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach (var id in waiting.Reader.ReadAllAsync(stoppingToken))
        {
            try
            {
                await Task.Run(() => ComputeAsync(id, stoppingToken), stoppingToken);
            }
            catch (Exception fault) when (!stoppingToken.IsCancellationRequested)
            {
                if (fault is not (NotAcceptedException or DbUpdateConcurrencyException)) NotComputed(log, id, fault);
                await EndAsync(id, job => job.Fail(WhyNot(fault)), stoppingToken);
            }
        }
    }

    private async Task ComputeAsync(int id, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var job = await db.SkylineJobs.SingleAsync(j => j.Id == id, cancel);
        job.Start();
        await db.SaveChangesAsync(cancel);
        var stance = await db.VantagePoints.Include(v => v.Location).SingleAsync(v => v.Id == job.VantagePointId, cancel);
        var files = await db.ElevationsAroundAsync(stance.Position, new SkylineQuestion(stance.Position, 0).ReachMetres, MostFiles, cancel);
        Require.That(files.Count > 0, "No stored elevation file lies within 100 km of the stance. Bring those that cover it first.");

        var grids = files.ConvertAll(file => file.ToGrid());
        var ground = SkylineFromElevation.GroundMetres(stance.Position, grids);
        var eye = stance.EyeMetresAboveMeanSea(stance.Location!.MeanSeaLevelAboveChartDatumMetres) ?? ground + stance.EyeHeightMetres;
        Require.That(eye is not null, "Neither the ground height of the stance nor a measured height in the files is known there, so the eye's height is not. Record the ground height, or bring a file without a void at the stance.");

        var question = new SkylineQuestion(stance.Position, eye.Value) { OutsideIsSea = job.OutsideIsSea };
        var told = new Told(percent => db.SkylineJobs.Where(j => j.Id == id).ExecuteUpdate(set => set.SetProperty(j => j.PercentDone, percent)));
        var found = SkylineFromElevation.Of(question, grids, told, cancel);
        Require.That(found.UnknownShare < MostUnknown, $"Hardly a direction could be computed: each leaves the files within {question.ReachMetres / 1000:0} km, or meets voids before. Bring the squares around, or take what lies outside as open sea where it is. The skyline is as it was.");
        Require.That(!(found.GroundMetres > eye + MostUnderGround), string.Create(CultureInfo.InvariantCulture,
            $"The files put the ground there at {found.GroundMetres:0} m, and the eye is recorded at {eye:0.0} m above mean sea level: one of the two is wrong, or the stance lies elsewhere. Mend the ground height or the position. The skyline is as it was."));
        var today = clock.GetCurrentInstant().InZone(stance.Location.Zone).Date;
        var before = stance.SkylineText;
        stance.Draw(found.Skyline, SkylineOrigin.Computed(question, found, files.Select(f => f.Name)), today);
        job.Finish(SkylineOrigin.Outcome(question, found));
        if (stance.SkylineText != before)
        {
            db.Add(Revision.OfSkyline(stance, before, null, clock.GetCurrentInstant(), "Computed from elevation files"));
            db.Add(new AuditEntry(Act.SkylineComputed, clock.GetCurrentInstant(), null, words: stance.Name));
        }
        // Skyline and outcome together, or neither.
        await db.SaveChangesAsync(cancel);
    }

    private static string WhyNot(Exception fault) => fault switch
    {
        NotAcceptedException told => told.Message,
        DbUpdateConcurrencyException => "Somebody changed the vantage point while its skyline was being computed. What they changed stands; start it again if you want the computed one.",
        _ => "Something went wrong on the site; its log says what. The skyline is as it was.",
    };

    private async Task EndAsync(int id, Action<SkylineJob> how, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.SkylineJobs.SingleOrDefaultAsync(j => j.Id == id, cancel) is { } job) how(job);
        await db.SaveChangesAsync(cancel);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Skylines left open by an earlier run could not be looked for")]
    private static partial void NotSwept(ILogger log, Exception fault);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Skyline job {Id} was not done")]
    private static partial void NotComputed(ILogger log, int id, Exception fault);

    /// <summary>Tells each tenth of the circle once.</summary>
    private sealed class Told(Action<int> tell) : IProgress<double>
    {
        private int last;

        public void Report(double value)
        {
            var percent = (int)(value * 10) * 10;
            if (percent > last) tell(last = percent);
        }
    }
}
