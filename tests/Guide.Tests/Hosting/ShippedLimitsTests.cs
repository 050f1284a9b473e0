using System.Globalization;
using System.Text.RegularExpressions;
using Foreshore.Guide.HouseRules;
using Foreshore.Guide.Photos;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>What compose and the systemd unit ask for holds what the program can take.</summary>
public partial class ShippedLimitsTests
{
    private const long Mebi = 1 << 20;

    /// <summary>Of the program beside its heap, and of the process for a photo beside the picture; as measured, rounded up (docs/reliability.md).</summary>
    private const long Program = 160 * Mebi;
    private const long PhotoProgram = 64 * Mebi;

    [Fact]
    public void Compose_gives_what_the_site_and_one_photo_take()
    {
        var compose = Read("docker-compose.yml");

        AssertHolds(long.Parse(MemLimit().Match(compose).Groups[1].Value, CultureInfo.InvariantCulture) * Mebi, Heap().Match(compose).Groups[1].Value);
    }

    [Fact]
    public void The_unit_gives_what_the_site_and_one_photo_take()
    {
        var unit = Read("deploy/foreshore.service");

        AssertHolds(long.Parse(MemoryMax().Match(unit).Groups[1].Value, CultureInfo.InvariantCulture) * 1024 * Mebi, Heap().Match(unit).Groups[1].Value);
    }

    /// <summary>A form with four photos is put down on a disk, not in memory that looks like one.</summary>
    [Fact]
    public void Posts_are_put_down_outside_the_memory()
    {
        Assert.Contains("ASPNETCORE_TEMP=/var/spool/foreshore", Read("deploy/Dockerfile"), StringComparison.Ordinal);
        Assert.Contains("- spool:/var/spool/foreshore", Read("docker-compose.yml"), StringComparison.Ordinal);
        Assert.Contains("ASPNETCORE_TEMP=/var/cache/foreshore", Read("deploy/foreshore.service"), StringComparison.Ordinal);
        Assert.Contains("CacheDirectory=foreshore", Read("deploy/foreshore.service"), StringComparison.Ordinal);
    }

    private static void AssertHolds(long limit, string heap)
    {
        var heapBytes = long.Parse(heap, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        Assert.InRange(heapBytes, 256 * Mebi, limit);
        Assert.InRange(heapBytes + Program + Developing.MostNative + Developing.MostBytes + PhotoProgram, 0, limit);
    }

    private static string Read(string file) => File.ReadAllText(Path.Combine(SourceTree.Root, file));

    [GeneratedRegex(@"mem_limit: (\d+)m")]
    private static partial Regex MemLimit();

    [GeneratedRegex(@"MemoryMax=(\d+)G")]
    private static partial Regex MemoryMax();

    [GeneratedRegex("DOTNET_GCHeapHardLimit(?:: \"|=)([0-9A-F]+)")]
    private static partial Regex Heap();
}
