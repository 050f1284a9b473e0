using Foreshore.Almanac.Light;
using Foreshore.Guide.Api;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Demo;
using Foreshore.Guide.Keeping;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Outlooks;
using Foreshore.Guide.Support;
using Foreshore.Guide.Tides;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Itineraries;

/// <summary>
/// Board, strip, good dates, season's usable time, tide page and API, walked over every composition of the demo for 60 days: they
/// tell the same windows, the same way and the same turn back (domain.md 4). Only the project is held against itself here; the
/// rules are held against an independent itinerary in <see cref="DemoItineraryTests"/>.
/// </summary>
public class AgreementTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private const int Days = 60;

    /// <summary>
    /// A turn back later than this after the session belongs to no plan for it. How far ahead it is known hangs on the days that a
    /// surface reckons with, so that later ones are not compared.
    /// </summary>
    private static readonly Duration Soon = Duration.FromHours(24);

    private const int LongestLeast = 10;
    private static readonly Duration Told = Duration.FromMilliseconds(5);

    [Fact]
    public async Task Every_surface_tells_the_same_window_way_and_turn_back()
    {
        var now = GuideHost.UsualNow;
        var today = now.InUtc().Date;
        var places = DemoGuide.Locations(today);
        await using var db = guide.Open();
        var tides = await db.TidesOfAsync(places, TestContext.Current.CancellationToken);
        var curves = new TideCurves(Shelf.Empty());
        var sky = new SharedSky(guide.Clock).For(now);
        List<string> found = [];
        var (windows, listed) = (0, 0);
        foreach (var place in places)
        {
            var cells = Enumerable.Range(0, Days / 2).Select(i => today.PlusDays(2 * i)).SelectMany(from =>
            {
                var (first, last) = (from.AtMidnight().InUtc().ToInstant(), from.PlusDays(4).AtMidnight().InUtc().ToInstant());
                return WeekendBoard.Of([place], from, now, BoardFilter.Everything, null, sky, waterOf: each => PlaceWater.Of(each, tides.Of(each), curves, first, last)).Rows;
            }).SelectMany(row => row.Cells.Where(cell => cell.Judgement is not null).Select(cell => (row.Stance, row.Composition, Cell: cell))).ToList();
            var turns = new Dictionary<(VantagePoint, LocalDate), StanceTurns>();
            foreach (var picture in cells.GroupBy(cell => cell.Composition))
            {
                var stance = picture.First().Stance;
                var view = new StanceView(new PlaceView(place, today, ((CountryCautions?)null).ToPrint(), tides.Of(place)), stance);
                var use = PictureUse.Of(view, picture.Key, curves, now);
                var begin = place.Zone.AtStartOfDay(today).ToInstant();
                var dates = GoodDates.Next(picture.Key.ToScene(stance, place), place.Zone, begin, sky, 2000, use.Over(begin, begin + Duration.FromDays(366), sky),
                    goes: use.Goes(begin, begin + Duration.FromDays(366), sky));
                var bySession = dates.ToDictionary(date => (date.Session.Kind, date.Session.Date));
                foreach (var (_, _, cell) in picture)
                {
                    var date = bySession.GetValueOrDefault((cell.Session.Kind, cell.Session.Date));
                    var name = $"{stance.Name}, {picture.Key.Name}, {cell.Session.Date:uuuu-MM-dd} {cell.Session.Kind}";
                    if (date is not null) listed++;
                    if (cell.Plan is not null) windows++;
                    found.AddRange(Listed(cell, date, use).Concat(Drawn(cell, place.Zone)).Concat(OnTidePage(cell)).Take(1).Select(fault => $"{name}: {fault}"));
                }

                found.AddRange(Season(place, stance, picture.Key, use, dates, sky));

                IEnumerable<string> OnTidePage(BoardCell cell)
                {
                    if (cell is not { Plan: { Stay: { } stay } plan } || Near(plan.TurnBack, cell.Span!) is not { } back) yield break;
                    var day = (stay.TurnBack!.Value < plan.Window.End + Duration.FromHours(12) ? plan.Window.Start : back).InZone(place.Zone).Date;
                    if (!turns.TryGetValue((stance, day), out var page))
                    {
                        var (first, last) = TideDrawing.Span(day, place.Zone);
                        turns[(stance, day)] = page = StanceTurns.Of(stance, place, day, PlaceWater.Of(place, tides.Of(place), curves, first, last), now);
                    }

                    var told = page.Ways.Where(way => way.Way.Name == plan.Way.Name).SelectMany(page.Coming).Where(one => (one.Stay.From ?? Instant.MinValue) <= plan.Window.Start + Told && (one.TurnBack ?? Instant.MaxValue) > plan.Window.Start).ToList();
                    if (told.Count == 0)
                        yield return $"the tide page has no stay by {plan.Way.Name} at {Clock(plan.Window.Start)}; the board turns back {Clock(back)}";
                    else if (!told.Any(one => one.TurnBack == back) && back <= page.Drawn.End + Duration.FromHours(12))
                        yield return $"the tide page turns back {Clock(told[0].TurnBack)}, the board {Clock(back)}, both by {plan.Way.Name}";
                }

                string Clock(Instant? time) => time is { } at ? at.InZone(place.Zone).ToString("uuuu-MM-dd HH:mm:ss", System.Globalization.CultureInfo.InvariantCulture) : "never";
            }
        }

        Assert.True(found.Count == 0, $"{found.Count} of {windows} windows and {listed} dates\n" + string.Join('\n', found));
        Assert.True(windows > 1000 && listed > 1000, $"{windows} windows and {listed} dates are too few to prove anything");
    }

    private static IEnumerable<string> Listed(BoardCell cell, GoodDate? date, PictureUse use)
    {
        var judgement = cell.Judgement!;
        if (date is not null && judgement.Verdict is Verdict.DoesNotSuit or Verdict.KeepOff)
            yield return $"a good date, and on the board {judgement.Verdict}: {judgement.Reasons[0]}{(use.Missing is null ? "" : $" (dates by light alone: {use.Missing})")}";
        if (use.Missing is not null) yield break;
        if (date is not null && date.Stay?.TurnBackFrom(date.Windows.Max(window => window.End)) > date.Session.End + Soon)
            yield return $"the date turns back {date.Stay!.TurnBack}, days after its session";
        if (cell.Plan?.TurnBack > cell.Span!.End + Soon) yield return $"the board turns back {cell.Plan!.TurnBack}, days after the session";
        if (cell.Plan is not { } plan) yield break;
        if (date is null)
        {
            if (judgement.Verdict is Verdict.Suits or Verdict.Borderline || plan.Stay is not null) yield return $"a window on the board ({judgement.Verdict}) by {plan.Way.Name}, and no good date";
            yield break;
        }

        var at = Enumerable.Range(0, date.Windows.Count).Where(i => date.Windows[i].Start <= plan.Window.Start + Told && date.Windows[i].End >= plan.Window.End - Told).ToList();
        if (at.Count == 0)
            yield return $"the board's window {plan.Window.Start} to {plan.Window.End} lies in none of the date's: {string.Join(", ", date.Windows)}";
        else if (date.Stays.Count == 0)
            yield return "the date names no stay";
        else if (!at.Any(i => date.Stays[i] is { } stay && Near(stay.TurnBack, date.Session) == Near(plan.TurnBack, date.Session) && stay.Plan.Name == plan.Way.Name))
            yield return $"the board turns back {plan.TurnBack} by {plan.Way.Name}, the date {string.Join(", ", at.Select(i => $"{date.Stays[i]?.TurnBack} by {date.Stays[i]?.Plan.Name}"))}";
    }

    private static Instant? Near(Instant? turnBack, Session session) => turnBack <= session.End + Soon ? turnBack : null;

    private static IEnumerable<string> Drawn(BoardCell cell, DateTimeZone zone)
    {
        var answer = WeekendCellAnswer.Of(cell, zone);
        if (answer.TurnBack?.ToUniversalTime() != cell.Plan?.TurnBack?.ToDateTimeOffset()) yield return $"the API turns back {answer.TurnBack}, the board {cell.Plan?.TurnBack}";
        if (answer.Way != cell.By?.Way.Name) yield return $"the API goes by {answer.Way}, the board by {cell.By?.Way.Name}";
        if (cell.Plan is { } planned && planned.Way != cell.By?.Way) yield return "the board's plan goes by another way than its verdict";
        if (WaterDrawing.Of(cell) is not { } strip) yield break;
        if (cell.Plan is { TurnBack: { } back } && back <= cell.Span!.End + Duration.FromHours(6) && strip.TurnBack?.Time != back)
            yield return $"the strip turns back {strip.TurnBack?.Time}, the board {back}";
        if (cell.Plan?.TurnBack is null && strip.TurnBack is not null) yield return $"the strip turns back {strip.TurnBack.Value.Time}, the board never";
        if (cell.Plan is { Itinerary: not null } plan && !strip.Parts.Any(part => part.Name == "usable" && part.Span == new Interval(plan.Window.Start, plan.Window.End)))
            yield return "the strip draws another window than the board";
    }

    /// <summary>Minutes of December in the season table and in the dates.</summary>
    private static IEnumerable<string> Season(Location place, VantagePoint stance, Composition picture, PictureUse use, IReadOnlyList<GoodDate> dates, SkyEphemeris sky)
    {
        if (use.Missing is not null) yield break;
        var month = new YearMonth(2026, 12);
        var (from, to) = (place.Zone.AtStartOfDay(month.OnDayOfMonth(1)).ToInstant(), place.Zone.AtStartOfDay(month.OnDayOfMonth(1).PlusMonths(1)).ToInstant());
        var season = SeasonTables.For(picture.ToScene(stance, place), place.Zone, month, HoursOut.Unrestricted, sky, use.Over(from, place.Zone.AtStartOfDay(new LocalDate(2027, 12, 1)).ToInstant(), sky));
        if (season.Use is not { } told)
        {
            yield return $"{stance.Name}, {picture.Name}: the season table knows no use, and the dates do";
            yield break;
        }

        var listed = dates.SelectMany(date => date.Windows).Sum(window => Math.Max(0, (Instant.Min(window.End, to) - Instant.Max(window.Start, from)).TotalMinutes));
        var minutes = told.Months[0].MeanMinutesUnrestricted * 31;
        // Light that the bound of a session cuts shorter than its least length is in the table and in no date.
        if (minutes < listed - 2 || minutes > listed + 31 * LongestLeast)
            yield return $"{stance.Name}, {picture.Name}: the season table has {minutes:0.0} usable minutes in December, the dates {listed:0.0}";
    }
}
