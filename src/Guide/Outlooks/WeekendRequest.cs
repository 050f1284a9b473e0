using System.Globalization;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Shell;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Outlooks;

/// <summary>What the address of a weekend page asks for, read leniently where a slip does no harm and refused where it would mislead.</summary>
public sealed class WeekendRequest
{
    private static readonly LocalDatePattern Iso = LocalDatePattern.Iso;

    private WeekendRequest() { }

    public LocalDate? From { get; private init; }

    public string FromTyped { get; private init; } = "";

    public string WithinTyped { get; private init; } = "";

    public BoardFilter Filter { get; private init; } = BoardFilter.Everything;

    /// <summary>The session a phone shows; null: the first still to come.</summary>
    public string? Session { get; private init; }

    /// <summary>The cell whose strip is open: <c>location/vantage/composition/session</c>.</summary>
    public string? Open { get; private init; }

    public IReadOnlyList<FieldFault> Faults { get; private init; } = [];

    public static WeekendRequest Read(IQueryCollection query)
    {
        List<FieldFault> faults = [];
        var typed = query["from"].ToString().Trim();
        return new WeekendRequest
        {
            From = Date(typed, faults),
            FromTyped = Kept(typed),
            WithinTyped = Kept(query["within"].ToString()),
            Filter = new BoardFilter(Footing(query["footing"], faults), Within(query["within"], faults), Order(query["order"], faults)),
            Session = Known(query["session"]),
            Open = query["open"].ToString() is { Length: > 0 and <= 300 } open ? open : null,
            Faults = faults,
        };
    }

    /// <summary>The same page with other parts changed; empty parts are left out.</summary>
    public string Address(LocalDate? from = null, string? session = null, string? open = null)
    {
        List<string> parts = [];
        Add("from", (from ?? From) is { } date ? Iso.Format(date) : null);
        Add("footing", Filter.Footing is { } footing ? footing.ToString().ToLowerInvariant() : null);
        Add("within", Filter.WithinKilometres?.ToString(CultureInfo.InvariantCulture));
        Add("order", Filter.OrderBy == BoardOrder.Verdict ? null : Filter.OrderBy.ToString().ToLowerInvariant());
        Add("session", session ?? Session);
        Add("open", open);
        return parts.Count == 0 ? "/weekend" : $"/weekend?{string.Join('&', parts)}";

        void Add(string name, string? value)
        {
            if (value is not null)
                parts.Add($"{name}={value}");
        }
    }

    private static string Kept(string typed) => typed.Length > 40 ? typed[..40] : typed;

    private static LocalDate? Date(string typed, List<FieldFault> faults)
    {
        if (typed.Length == 0)
            return null;

        if (typed.Length > 40 || !Iso.Parse(typed).TryGetValue(default, out var date))
            faults.Add(new("from", "This is not a date the page can read. Enter year, month and day, like 2026-11-27."));
        else if (date < Weekend.Earliest || date > Weekend.Latest)
            faults.Add(new("from", "The sun is computed for 1950 to 2100 only. Enter a date within those years, like 2026-11-27."));
        else
            return date;
        return null;
    }

    private static Footing? Footing(string? typed, List<FieldFault> faults)
    {
        if (string.IsNullOrEmpty(typed))
            return null;
        if (Enum.TryParse<Footing>(typed, ignoreCase: true, out var footing) && Enum.IsDefined(footing) && !char.IsAsciiDigit(typed[0]))
            return footing;
        faults.Add(new("footing", "There is no such footing. Choose one from the list."));
        return null;
    }

    private static int? Within(string? typed, List<FieldFault> faults)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return null;
        if (TypedValue.Whole(typed, 1, 20_000) is { } kilometres)
            return kilometres;
        faults.Add(new("within", "A distance is a whole number of kilometres from 1 to 20000. Enter it like 40, or leave it empty for anywhere."));
        return null;
    }

    private static BoardOrder Order(string? typed, List<FieldFault> faults)
    {
        if (string.IsNullOrEmpty(typed))
            return BoardOrder.Verdict;
        if (Enum.TryParse<BoardOrder>(typed, ignoreCase: true, out var order) && Enum.IsDefined(order) && !char.IsAsciiDigit(typed[0]))
            return order;
        faults.Add(new("order", "There is no such order. Choose one from the list."));
        return BoardOrder.Verdict;
    }

    private static string? Known(string? session) =>
        session is { Length: > 0 and <= 12 } && session.All(c => char.IsAsciiLetterLower(c) || c == '-') ? session : null;
}
