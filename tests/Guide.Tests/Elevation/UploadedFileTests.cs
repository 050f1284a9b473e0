using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Elevation;

public class UploadedFileTests
{
    private static readonly byte[] Hills = MadeFile.Hgt((row, column) => (short)(100 + 60 * Math.Sin(row / 40.0) + column / 30));

    [Fact]
    public void A_height_file_comes_plain_or_zipped_and_is_kept_to_the_metre()
    {
        var (name, plain) = UploadedFile.Read("c:\\tiles\\n44w068.HGT", Hills);
        var (_, zipped) = UploadedFile.Read("anything.zip", MadeFile.Zip(("N44W068.hgt", Hills)));
        var stored = new ElevationFile(name, plain, Instant.FromUtc(2026, 11, 25, 12, 0)).ToGrid();

        Assert.Equal("N44W068.hgt", name);
        Assert.True(plain.Samples.SequenceEqual(zipped.Samples));
        Assert.True(plain.Samples.SequenceEqual(stored.Samples));
        Assert.Equal((45, -68, 1201), (stored.NorthDegrees, stored.WestDegrees, stored.Rows));
    }

    [Fact]
    public void Samples_of_any_kind_survive_being_packed()
    {
        var random = new Random(7);
        var samples = new short[60 * 40];
        for (var i = 0; i < samples.Length; i++) samples[i] = i % 9 == 0 ? ElevationGrid.Void : (short)random.Next(-32767, 32767);
        var grid = new ElevationGrid(45, 0, 0.01, 0.02, 60, 40, samples, 0.1);

        Assert.True(new ElevationFile("any", grid, Instant.MinValue).ToGrid().Samples.SequenceEqual(samples));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_geotiff_in_degrees_is_read_at_the_middle_of_its_pixels(bool isTiled)
    {
        var (_, grid) = UploadedFile.Read("land.tif", MadeFile.Tiff(isTiled: isTiled));

        Assert.Equal((20, 10), (grid.Columns, grid.Rows));
        Assert.Equal(44.995, grid.NorthDegrees, 1e-9);
        Assert.Equal(-67.995, grid.WestDegrees, 1e-9);
        Assert.Equal(34, grid.MetresAt(new Position(44.965, -67.955))!.Value, 0.01);
        Assert.Equal(109, grid.HighestMetres!.Value, 0.01);
    }

    [Fact]
    public void Voids_of_a_geotiff_stay_voids() =>
        Assert.Equal(3, UploadedFile.Read("land.tif", MadeFile.Tiff(metres: (row, column) => row == 0 ? column switch { 0 => float.NaN, 1 => -9999, 2 => -32768, _ => 5 } : 5)).Grid.VoidCount);

    [Fact]
    public void A_pixel_that_is_a_point_stands_where_it_says() =>
        Assert.Equal(45, UploadedFile.Read("land.tif", MadeFile.Tiff(keys: [1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 2, 2048, 0, 1, 4269])).Grid.NorthDegrees);

    // Made when its turn comes: some are large.
    private static readonly (string Name, Func<byte[]> Bytes, string Words)[] Bad =
    [
        ("N44W068.hgt", () => [], "empty"),
        ("N44W068.hgt", () => Hills[..^2], "cut short"),
        ("N44W068.hgt", () => [.. Hills, 0, 0], "two known lengths"),
        ("N44W068.hgt", () => MadeFile.Hgt((row, column) => (short)(100 + 60 * Math.Sin(row / 40.0) + column / 30), isSwapped: true), "wrong way round"),
        ("N44W068.hgt", () => MadeFile.Hgt((_, _) => short.MinValue), "only voids"),
        ("N91W068.hgt", () => Hills, "N91"),
        ("S00W068.hgt", () => Hills, "S00"),
        ("heights.hgt", () => Hills, "does not name a corner"),
        ("notes.txt", () => "some words"u8.ToArray(), "neither a height file"),
        ("N44W068.hgt.zip", () => MadeFile.Zip(("readme.txt", [1])), "no height file"),
        ("N44W068.hgt.zip", () => MadeFile.Zip(("N44W068.hgt", Hills[..100]), ("N45W068.hgt", Hills[..100])), "several"),
        ("N44W068.hgt.zip", () => MadeFile.Zip(("N44W068.hgt", Hills))[..5000], "damaged"),
        ("N44W068.hgt.zip", () => MadeFile.Zip(("N44W068.hgt", new byte[40_000_000])), "more than"),
        ("land.tif", () => "II*\0"u8.ToArray(), "read"),
        ("land.tif", () => "II+\0\x8\0\0\0"u8.ToArray(), "BigTIFF"),
        ("land.tif", () => MadeFile.Tiff()[..^40], "contradicts itself"),
        ("land.tif", () => MadeFile.Tiff()[..200], "read"),
        ("land.tif", () => MadeFile.Tiff(keys: [1, 1, 0, 1, 1024, 0, 1, 1]), "projected"),
        ("land.tif", () => MadeFile.Tiff(keys: [1, 1, 0, 2, 1024, 0, 1, 2, 2048, 0, 1, 4267]), "EPSG:4267"),
        ("land.tif", () => MadeFile.Tiff(transformation: [0.01, 0.001, 0, -68, 0.001, -0.01, 0, 45, 0, 0, 0, 0, 0, 0, 0, 1]), "rotated"),
        ("land.tif", () => MadeFile.Tiff(scale: [0.01, -0.01, 0]), "north to south"),
        ("land.tif", () => MadeFile.Tiff(tie: [0, 0, 0, -68, 95, 0]), "leaves the globe"),
        ("land.tif", () => MadeFile.Tiff(tie: [0, 0, 0, double.NaN, 45, 0]), "not a number"),
        ("land.tif", () => MadeFile.Tiff(bands: 3), "several bands"),
        ("land.tif", () => MadeFile.Tiff(metres: (_, _) => -4000), "no ground has"),
        ("land.tif", () => MadeFile.Tiff(metres: (_, _) => float.NaN), "only voids"),
        ("land.tif", () => MadeFile.Tiff(width: 1), "no heights"),
    ];

    public static TheoryData<int, string> Cases => [.. Bad.Select((bad, i) => (i, bad.Words))];

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_cannot_be_read_is_refused_in_words(int number, string words)
    {
        var (name, bytes, _) = Bad[number];

        Assert.Contains(words, Assert.Throws<NotAcceptedException>(() => UploadedFile.Read(name, bytes())).Message, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_header_that_promises_more_than_there_is_asks_for_no_memory()
    {
        Assert.Contains("at most", Assert.Throws<NotAcceptedException>(() => UploadedFile.Read("land.tif", MadeFile.LyingTiff())).Message, StringComparison.Ordinal);
    }

    /// <summary>A kilobyte that speaks of gigabytes: in a field's length, in a strip's, in the rows that its strips are counted by.</summary>
    [Theory]
    [InlineData(33550, 4, 0x0FFF_FFFF)]
    [InlineData(34735, 4, 0x0FFF_FFFF)]
    [InlineData(273, 4, 0x0FFF_FFFF)]
    [InlineData(279, 4, 0x0FFF_FFFF)]
    [InlineData(279, 8, 0x0FFF_FFFF)]
    [InlineData(257, 8, 0x7FFF_FFFF)]
    [InlineData(277, 8, 60_000)]
    public void A_field_that_lies_of_its_length_asks_for_no_memory(int tag, int place, int lie)
    {
        var lying = MadeFile.Tiff(height: 4);
        var at = BitConverter.ToInt32(lying, 4) + 2;
        while (BitConverter.ToUInt16(lying, at) != tag) at += 12;
        if (place == 8) BitConverter.GetBytes((ushort)4).CopyTo(lying, at + 2);
        BitConverter.GetBytes(lie).CopyTo(lying, at + place);

        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Throws<NotAcceptedException>(() => UploadedFile.Read("land.tif", lying));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4 << 20);
    }

    [Fact]
    public void Bytes_changed_at_random_never_bring_it_down_nor_ask_for_much_memory()
    {
        var random = new Random(11);
        var good = MadeFile.Tiff();
        for (var round = 0; round < 400; round++)
        {
            var bad = (byte[])good.Clone();
            for (var i = 0; i < 4; i++) bad[random.Next(2, bad.Length)] = (byte)random.Next(256);
            var before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                UploadedFile.Read("land.tif", bad);
            }
            catch (NotAcceptedException refused)
            {
                Assert.NotEmpty(refused.Message);
            }

            // The most that a file may hold, 27 million heights, in the forms it goes through.
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 300 << 20);
        }
    }
}
