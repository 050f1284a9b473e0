using Foreshore.Guide.Compositions;

namespace Foreshore.Guide.Outlooks;

public enum BoardOrder { Verdict, Time, Coast }

/// <summary>What shortens the weekend board, and its order.</summary>
/// <param name="Footing">The hardest footing the reader takes on; null: any.</param>
/// <param name="WithinKilometres">From the home point as the crow flies; null: anywhere. Without a home point it keeps everything.</param>
public sealed record BoardFilter(Footing? Footing, int? WithinKilometres, BoardOrder OrderBy)
{
    public static readonly BoardFilter Everything = new(null, null, BoardOrder.Verdict);

    public bool Keeps(VantagePoint stance, double? homeKilometres) =>
        (Footing is null || stance.Footing <= Footing)
        && (WithinKilometres is not { } within || homeKilometres is not { } kilometres || kilometres <= within);

    /// <summary>
    /// Rows of one place stay together; places follow their best row. With a session, its verdicts and windows alone count:
    /// that is how a phone reads the board.
    /// </summary>
    public IReadOnlyList<BoardRow> Order(IReadOnlyList<BoardRow> rows, int? session = null)
    {
        var places = rows.GroupBy(row => row.Place.Id).Select(group => group.ToList());
        var ordered = OrderBy switch
        {
            BoardOrder.Verdict => places.OrderBy(group => group.Min(row => row.BestOf(session))).ThenBy(group => Earliest(group, session)),
            BoardOrder.Time => places.OrderBy(group => Earliest(group, session)),
            BoardOrder.Coast => places.OrderBy(group => group[0].Place.CoastOrder),
            _ => throw new InvalidOperationException($"No such order: {OrderBy}."),
        };
        return [.. ordered.ThenBy(group => group[0].Place.CoastOrder).SelectMany(group => Within(group, session))];
    }

    private IEnumerable<BoardRow> Within(List<BoardRow> group, int? session) => OrderBy switch
    {
        BoardOrder.Verdict => group.OrderBy(row => row.BestOf(session)).ThenBy(row => row.FirstWindow(session) ?? NodaTime.Instant.MaxValue),
        BoardOrder.Time => group.OrderBy(row => row.FirstWindow(session) ?? NodaTime.Instant.MaxValue),
        _ => group,
    };

    private static NodaTime.Instant Earliest(List<BoardRow> group, int? session) => group.Min(row => row.FirstWindow(session) ?? NodaTime.Instant.MaxValue);
}
