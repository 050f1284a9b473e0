namespace Foreshore.Almanac.Earth;

public class HeightFileTests
{
    private const int Side = 1201;

    // Rises 2 m a row southward and 1 m a column eastward.
    private static short Slope(int i) => (short)(2 * (i / Side) + i % Side);

    [Theory]
    [InlineData("N44W068.hgt", 44, -68)]
    [InlineData("tiles/s01e000.HGT", -1, 0)]
    [InlineData("N00W180.hgt", 0, -180)]
    [InlineData("S90E179.hgt", -90, 179)]
    public void A_name_gives_its_south_west_corner(string name, double latitude, double longitude) =>
        Assert.Equal(new Position(latitude, longitude), HeightFile.CornerOf(name));

    [Theory]
    [InlineData("N91W068.hgt")]
    [InlineData("N90W068.hgt")]
    [InlineData("S00W068.hgt")]
    [InlineData("S91W068.hgt")]
    [InlineData("N44W000.hgt")]
    [InlineData("N44W181.hgt")]
    [InlineData("N44E180.hgt")]
    [InlineData("E44N010.hgt")]
    [InlineData("N4aW068.hgt")]
    [InlineData("N44W068.tif")]
    [InlineData("N44W068 (1).hgt")]
    [InlineData("")]
    public void Lying_names_are_refused(string name)
    {
        var refused = Assert.Throws<HeightFileException>(() => HeightFile.CornerOf(name));

        Assert.Equal(HeightFileFault.Name, refused.Fault);
        Assert.True(refused.Message.Length > 40);
    }

    [Fact]
    public void Rows_run_from_the_north_and_columns_from_the_west_and_heights_between_are_bilinear()
    {
        var grid = HeightFile.Read("N44W068.hgt", MadeGround.Bytes(Side, Slope));

        Assert.Equal(0, grid.MetresAt(new Position(45, -68)));
        Assert.Equal(1200, grid.MetresAt(new Position(45, -67))!.Value, 1e-6);
        Assert.Equal(2400, grid.MetresAt(new Position(44, -68))!.Value, 1e-6);
        Assert.Equal(2400 - 2400 * 0.25 + 1200 * 0.75, grid.MetresAt(new Position(44.25, -67.25))!.Value, 1e-6);
        Assert.Null(grid.MetresAt(new Position(45.001, -67.5)));
        Assert.Null(grid.MetresAt(new Position(44.5, -66.9)));
        Assert.Equal(3600, grid.HighestMetres);
    }

    [Fact]
    public void One_second_files_are_told_by_their_length() =>
        Assert.Equal(1.0 / 3600, HeightFile.Read("S01E010.hgt", MadeGround.Bytes(3601, _ => 7)).LatitudeStepDegrees);

    [Fact]
    public void Beside_a_void_the_height_is_unknown()
    {
        var grid = HeightFile.Read("N44W068.hgt", MadeGround.Bytes(Side, i => i == 0 ? ElevationGrid.Void : (short)5));

        Assert.Equal(1, grid.VoidCount);
        Assert.Null(grid.MetresAt(new Position(44.9999, -67.9999)));
        Assert.Equal(5, grid.MetresAt(new Position(44.9, -67.9)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1000)]
    [InlineData(HeightFile.ThreeSecondBytes - 1)]
    [InlineData(HeightFile.ThreeSecondBytes + 2)]
    [InlineData(HeightFile.OneSecondBytes - 2)]
    [InlineData(HeightFile.OneSecondBytes + 1)]
    public void Lengths_of_no_known_file_are_refused(int length) =>
        Assert.Equal(HeightFileFault.Length, Assert.Throws<HeightFileException>(() => HeightFile.Read("N44W068.hgt", new byte[length])).Fault);

    [Fact]
    public void Swapped_bytes_are_told_from_ground()
    {
        static short Hills(int i) => (short)(120 + 100 * Math.Sin(i % Side / 90.0) * Math.Cos(i / Side / 70.0));

        Assert.NotNull(HeightFile.Read("N44W068.hgt", MadeGround.Bytes(Side, Hills)));
        var refused = Assert.Throws<HeightFileException>(() => HeightFile.Read("N44W068.hgt", MadeGround.Bytes(Side, Hills, isSwapped: true)));
        Assert.Equal(HeightFileFault.ByteOrder, refused.Fault);
    }

    [Fact]
    public void Heights_that_no_ground_has_and_files_of_voids_alone_are_refused()
    {
        var high = Assert.Throws<HeightFileException>(() => HeightFile.Read("N44W068.hgt", MadeGround.Bytes(Side, i => (short)(i < 3 ? 9001 : 5))));
        Assert.Equal(HeightFileFault.Heights, high.Fault);
        Assert.Contains("9,001", high.Message, StringComparison.Ordinal);

        var empty = Assert.Throws<HeightFileException>(() => HeightFile.Read("N44W068.hgt", MadeGround.Bytes(Side, _ => ElevationGrid.Void)));
        Assert.Equal(HeightFileFault.Empty, empty.Fault);
    }

    [Fact]
    public void Grids_that_contradict_themselves_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new ElevationGrid(45, 0, 1, 1, 2, 2, new short[5]));
        Assert.Throws<ArgumentException>(() => new ElevationGrid(45, 0, 1, 1, 1, 2, new short[2]));
        Assert.Throws<ArgumentException>(() => new ElevationGrid(95, 0, 1, 1, 2, 2, new short[4]));
        Assert.Throws<ArgumentException>(() => new ElevationGrid(45, 0, 0, 1, 2, 2, new short[4]));
        Assert.Throws<ArgumentException>(() => new ElevationGrid(45, 0, 1, 200, 3, 2, new short[6]));
    }

    [Fact]
    public void A_grid_over_the_date_line_is_reached_from_both_sides()
    {
        var grid = new ElevationGrid(10, 179, 1, 1, 3, 2, [1, 2, 3, 1, 2, 3]);

        Assert.Equal(1.5, grid.MetresAt(new Position(9.5, 179.5)));
        Assert.Equal(2.5, grid.MetresAt(new Position(9.5, -179.5)));
        Assert.Null(grid.MetresAt(new Position(9.5, -178.5)));
    }
}
