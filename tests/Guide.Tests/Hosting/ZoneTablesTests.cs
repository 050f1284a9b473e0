using Microsoft.Extensions.Logging;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Hosting;

public sealed class ZoneTablesTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("foreshore-zones-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    // NEWS of the IANA's tz database, releases 2026b to 2026f (https://data.iana.org/time-zones/tzdb/NEWS), as Debian's tzdata
    // 2026f-0+deb12u1 carries it in its changelog. Hours from UTC at noon of 1 December 2026; each was another in release 2025b.
    [Theory]
    [InlineData("Africa/Casablanca", 0)]
    [InlineData("Africa/El_Aaiun", 0)]
    [InlineData("America/Vancouver", -7)]
    [InlineData("America/Edmonton", -6)]
    [InlineData("America/Inuvik", -6)]
    [InlineData("America/Winnipeg", -5)]
    [InlineData("America/Havana", -4)]
    public void Changes_of_2026_are_known(string zone, int hours)
    {
        var offset = DateTimeZoneProviders.Tzdb[zone].GetUtcOffset(Instant.FromUtc(2026, 12, 1, 12, 0));
        Assert.Equal(Offset.FromHours(hours), offset);
    }

    [Fact]
    public void Morocco_was_an_hour_ahead_until_20_September_2026()
    {
        var zone = DateTimeZoneProviders.Tzdb["Africa/Casablanca"];
        Assert.Equal(Offset.FromHours(1), zone.GetUtcOffset(Instant.FromUtc(2026, 9, 20, 0, 59)));
        Assert.Equal(Offset.Zero, zone.GetUtcOffset(Instant.FromUtc(2026, 9, 20, 1, 0)));
    }

    /// <summary>Fails on a machine whose tables are newer: then take the newest NodaTime.</summary>
    [Fact]
    public void Tables_that_travel_with_the_site_are_no_older_than_this_machines()
    {
        Assert.Matches("^20[0-9]{2}[a-z]+$", ZoneTables.Bundled);
        var machine = ZoneTables.OfMachine();
        Assert.False(machine is not null && ZoneTables.IsOlder(ZoneTables.Bundled, machine), $"NodaTime carries {ZoneTables.Bundled}, this machine has {machine}.");
    }

    [Theory]
    [InlineData("# version 2099a\nR d 1916", true)]
    [InlineData("# version 2005a\nR d 1916", false)]
    [InlineData("nothing of the kind", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void Operator_is_told_when_the_machine_knows_better(string? file, bool isTold)
    {
        if (file is not null) File.WriteAllText(Path.Combine(folder, "tzdata.zi"), file);
        var log = new Heard();
        ZoneTables.WarnIfOlder(log, folder);
        Assert.Equal(isTold, log.Lines.Any(line => line.Contains(ZoneTables.Bundled, StringComparison.Ordinal) && line.Contains("2099a", StringComparison.Ordinal)));
        Assert.Equal(isTold ? 1 : 0, log.Lines.Count);
    }

    private sealed class Heard : ILogger
    {
        public List<string> Lines { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => Lines.Add(formatter(state, exception));
    }
}
