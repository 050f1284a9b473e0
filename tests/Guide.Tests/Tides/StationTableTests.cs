using System.Text;
using Foreshore.Almanac.Tides;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>Tables a club brings: good ones in all the shapes people save them in, bad ones with line, reason and remedy.</summary>
public class StationTableTests
{
    private static readonly DateTimeZone NewYork = DateTimeZoneProviders.Tzdb["America/New_York"];

    [Theory]
    [InlineData("constituent,amplitude,phase\nM2,2.648,98.4\nS2,0.415,138.8\n")]
    [InlineData("Constituent;Amplitude;Phase\r\nM2;2,648;98,4\r\nS2;0,415;138,8\r\n")]
    [InlineData("name\tamplitude_m\tphase_deg\nm2\t2.648\t98.4\nS2\t.415\t-221.2\n")]
    [InlineData("constituent,amplitude,phase\n\n\"M2\", 2.648 ,\"98.4\"\n\nS2,0.415,498.8")]
    public void Constituents_are_read_in_the_shapes_people_save_them(string text)
    {
        if (text.Contains("498.8", StringComparison.Ordinal))
        {
            Assert.Contains("outside a circle", Assert.Single(ConstituentTable.Read(text).Faults), StringComparison.Ordinal);
            return;
        }
        var (constants, faults) = ConstituentTable.Read(text);

        Assert.Empty(faults);
        Assert.Equal([("M2", 2.648, 98.4), ("S2", 0.415, 138.8)], constants.Select(c => (c.Constituent.Name, c.AmplitudeMetres, Math.Round(c.PhaseDegrees, 6))));
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("   \n ", "is empty")]
    [InlineData("constituent,amplitude,phase\n", "no row under it")]
    [InlineData("constituent,phase\nM2,98", "No column is headed \"amplitude\"")]
    [InlineData("M2,2.648,98.4\nS2,0.4,10", "Line 1: No column is headed \"constituent\"")]
    [InlineData("constituent,amplitude,phase\nM2,2.648,98.4\nXQ9,0.1,10", "Line 3: \"XQ9\" is no constituent")]
    [InlineData("constituent,amplitude,phase\nM2,-2.648,98.4", "Line 2: The amplitude is below zero")]
    [InlineData("constituent,amplitude,phase\nM2,264.8,98.4", "Metres are meant")]
    [InlineData("constituent,amplitude,phase\nM2,2.648,98.4\nS2,0.1,3\nM2,2.6,90", "Line 4: M2 stands in line 2 already")]
    [InlineData("constituent,amplitude,phase\nLAM2,0.05,122\nLAMBDA2,0.05,122", "Line 3: LAMBDA2 stands in line 2 already")]
    [InlineData("constituent,amplitude,phase\nM2,2,648,98,4", "Commas in numbers part fields too")]
    [InlineData("constituent,amplitude,phase\nM2,2.648", "It has 2 fields and the head has 3")]
    [InlineData("constituent,amplitude,phase\nM2,high,98.4", "\"high\" is not a number")]
    [InlineData("constituent,amplitude,phase\nM2,,98.4", "The amplitude is missing")]
    [InlineData("constituent,amplitude,phase\nM2,NaN,98.4", "is not a number")]
    [InlineData("constituent,amplitude,phase\nM2,1e400,98.4", "is not a number")]
    [InlineData("constituent,amplitude,phase\n,1,98.4", "has no name")]
    [InlineData("constituent,amplitude,phase\nM2,0,98.4", "Every amplitude is zero")]
    [InlineData("constituent,amplitude,phase\n\"M2,2.648,98.4\nS2,1,2", "Line")]
    public void What_is_wrong_with_constituents_is_said_with_its_line(string text, string words)
    {
        var (_, faults) = ConstituentTable.Read(text);

        Assert.Contains(faults, fault => fault.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void All_faults_of_a_table_are_told_at_once_and_no_more_than_one_can_read()
    {
        var text = "constituent,amplitude,phase\n" + string.Join('\n', Enumerable.Range(0, 300).Select(i => $"X{i},-1,bad"));
        var (_, faults) = ConstituentTable.Read(text);

        Assert.Equal(13, faults.Count);
        Assert.EndsWith("more.", faults[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_longer_than_any_stations_is_refused()
    {
        var text = "constituent,amplitude,phase\n" + string.Concat(Enumerable.Repeat("M2,1,2\n", 500));

        Assert.Contains(ConstituentTable.Read(text).Faults, fault => fault.Contains("at most 400 rows", StringComparison.Ordinal) || fault.Contains("more.", StringComparison.Ordinal));
    }

    [Fact]
    public void Bytes_become_text_only_where_it_is_certain_which()
    {
        const string text = "constituent,amplitude,phase\nM2,1,2";
        Assert.Equal(text, StationTable.Decode(Encoding.UTF8.GetBytes(text)).Text);
        Assert.Equal(text, StationTable.Decode([.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(text)]).Text);
        Assert.Equal(text, StationTable.Decode([.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)]).Text);
        Assert.Equal(text, StationTable.Decode([.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes(text)]).Text);
        Assert.Contains("CSV UTF-8", StationTable.Decode(Encoding.Latin1.GetBytes("Ålesund,1,2")).Fault, StringComparison.Ordinal);
        Assert.Contains("CSV UTF-8", StationTable.Decode([0x50, 0x4B, 0x03, 0x04, 0x00, 0x00]).Fault, StringComparison.Ordinal);
        Assert.Contains("empty", StationTable.Decode([]).Fault, StringComparison.Ordinal);
        Assert.Contains("larger than", StationTable.Decode(new byte[StationTable.MostBytes + 1]).Fault, StringComparison.Ordinal);
    }

    [Fact]
    public void High_and_low_waters_are_read_with_and_without_an_offset()
    {
        var (waters, faults) = TurnTable.Read("time,height,kind\n2026-11-25 04:21,0.0,L\n2026-11-25T10:34-05:00,5.0,H\n2026-11-25T21:57:00Z,-0.5,\n", NewYork);

        Assert.Empty(faults);
        Assert.Equal(
        [
            new TideExtreme(Instant.FromUtc(2026, 11, 25, 9, 21), 0, false), new TideExtreme(Instant.FromUtc(2026, 11, 25, 15, 34), 5, true),
            new TideExtreme(Instant.FromUtc(2026, 11, 25, 21, 57), -0.5, false),
        ], waters);
    }

    [Theory]
    [InlineData("time,height\n2026-11-25 04:21,0.0", "at least a high and a low water")]
    [InlineData("time,height\n25.11.2026 04:21,0.0\n2026-11-25 10:34,5", "Line 2: \"25.11.2026 04:21\" is no time")]
    [InlineData("time,height\n2026-11-25 10:34,5\n2026-11-25 04:21,0", "Line 3: It is earlier than line 2")]
    [InlineData("time,height\n2026-11-25 10:34,5\n2026-11-25 10:34,0", "has the time of line 2")]
    [InlineData("time,height\n2026-11-25 04:21,0\n2026-11-25 10:34,5\n2026-11-25 16:57,5.5", "the low water between them is missing")]
    [InlineData("time,height\n2026-11-25 04:21,1\n2026-11-25 10:34,1", "stands as high as line 2")]
    [InlineData("time,height\n2026-11-25 04:21,0\n2026-11-28 10:34,5", "More than 36 hours")]
    [InlineData("time,height,kind\n2026-11-25 04:21,0,H\n2026-11-25 10:34,5,L", "It says low water, but stands higher")]
    [InlineData("time,height,kind\n2026-11-25 04:21,0,ebb\n2026-11-25 10:34,5,H", "neither high nor low water")]
    [InlineData("time,height\n2026-11-01 01:30,0\n2026-11-01 07:30,5", "comes twice in America/New_York")]
    [InlineData("time,height\n2026-03-08 02:30,0\n2026-03-08 08:30,5", "does not exist in America/New_York")]
    [InlineData("time,height\n2126-11-25 04:21,1\n2126-11-25 10:34,2", "Line 2: The year 2126 lies outside those the guide reckons tides for, 1900 to 2100")]
    [InlineData("time,height\n1899-11-25 04:21,1\n1899-11-25 10:34,2", "Line 3: The year 1899 lies outside")]
    [InlineData("time,height\n2026-11-25 04:21,164\n2026-11-25 10:34,180", "Metres above chart datum are meant")]
    public void What_is_wrong_with_a_table_of_waters_is_said_with_its_line(string text, string words)
    {
        var (_, faults) = TurnTable.Read(text, NewYork);

        Assert.Contains(faults, fault => fault.Contains(words, StringComparison.Ordinal));
    }
}
