using CsCheck;
using Xunit;

namespace Foreshore.Guide.Shell.Ink;

public sealed class LabelRowsTests
{
    private static readonly Gen<double[]> Places = Gen.Double[0, 180].Array[0, 24];

    [Fact]
    public void Stacked_labels_of_one_row_never_touch() => Places.Sample(places =>
    {
        var rows = LabelRows.Stack(places, 6);
        return Enumerable.Range(0, places.Length).All(i => Enumerable.Range(0, i).All(j => rows[i] != rows[j] || Math.Abs(places[i] - places[j]) >= 6));
    });

    [Fact]
    public void Spread_labels_never_touch_keep_their_order_and_stay_inside() => Places.Sample(places =>
    {
        var spread = LabelRows.Spread(places, 5.8, 3, 177);
        var order = Enumerable.Range(0, places.Length).OrderBy(i => places[i]).Select(i => spread[i]).ToArray();
        return order.Zip(order.Skip(1)).All(pair => pair.Second - pair.First >= 5.8 - 1e-9)
            && order.All(at => at is >= 3 - 1e-9 and <= 177 + 1e-9);
    });

    [Fact]
    public void Labels_with_room_stay_where_they_are() =>
        Assert.Equal([10, 90, 50], LabelRows.Spread([10, 90, 50], 6, 0, 180));

    [Fact]
    public void Two_labels_on_one_spot_part_evenly() => Assert.Equal([47, 53], LabelRows.Spread([50, 50], 6, 0, 180));

    [Fact]
    public void More_labels_than_there_is_room_for_are_spaced_evenly() =>
        Assert.Equal([0, 5, 10], LabelRows.Spread([1, 2, 3], 100, 0, 10));
}
