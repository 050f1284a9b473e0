using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell.Maps;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Demo;

public sealed class DemoContentTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private static readonly IReadOnlyList<Location> Coast = DemoGuide.Locations(new LocalDate(2026, 11, 25));
    private static readonly IReadOnlyList<VantagePoint> Points = [.. Coast.SelectMany(l => l.VantagePoints)];
    private static readonly IReadOnlyList<Composition> Pictures = [.. Points.SelectMany(v => v.Compositions)];

    [Fact]
    public void The_coast_is_long_enough_to_be_a_guide()
    {
        Assert.True(Coast.Count >= 12);
        Assert.True(Points.Count >= 30);
        Assert.True(Pictures.Count >= 45);
        Assert.True(Points.Count(v => v.Reach == Reach.None) >= 10);
        Assert.Equal(Coast.Select(l => l.CoastOrder).Order(), Coast.Select(l => l.CoastOrder));
    }

    [Fact]
    public void Every_wanted_light_and_both_forms_of_tide_wish_occur()
    {
        Assert.Equal(Enum.GetValues<WantedLight>(), Pictures.SelectMany(c => c.Wanted).Distinct().Order());
        Assert.Contains(Pictures, c => c.Tide is { IsBand: true });
        Assert.Contains(Pictures, c => c.Tide is { IsBand: false });
    }

    [Fact]
    public void The_cases_a_club_meets_are_there()
    {
        var today = new LocalDate(2026, 11, 25);
        Assert.Contains(Coast, l => !l.HasRecommendedWayIn(today));
        Assert.Contains(Coast, l => l.Routes.Count > 1 && l.DefaultRoute(today) is { Order: > 1 });
        Assert.Contains(Coast, l => l.Routes.Any(r => r.Legs.Any(leg => leg.Crossing is not null)));
        Assert.Contains(Coast, l => l.HazardNotes.Any(n => n.IsSevere && n.IsUnchecked && n.ShowsOn(today)));
        Assert.Contains(Points, v => v.EyeMetresAboveMeanSea(2.96) > 40);
        Assert.Contains(Coast, l => l.VantagePoints.Any(v => v.HighestUsableTide?.NeedsChecking(l.TideStationId) == true));
        Assert.All(Coast, l => Assert.NotNull(l.Emergency));
    }

    [Fact]
    public void Every_way_names_its_car_parks_and_every_leg_of_one_that_may_be_recommended_answers_for_ground_and_tide()
    {
        var routes = Coast.SelectMany(l => l.Routes).ToList();
        Assert.All(routes, route => Assert.NotEmpty(route.Parking));
        Assert.All(routes.Where(route => route.MayBeRecommended), route => Assert.NotNull(route.Parking[0].WalkMinutes));
        Assert.All(routes.Where(route => route.MayBeRecommended).SelectMany(route => route.Legs), leg =>
        {
            Assert.NotEqual(TidalCut.Unknown, leg.TidalCut);
            Assert.NotEqual(LegGround.Unknown, leg.Ground);
        });
        Assert.Equal(["Light Road car park", "Verge before the gate"], Coast.Single(l => l.Slug == "halfmoon-light").Routes[0].Parking.Select(served => served.ParkingArea.Name));
    }

    /// <summary>Measured whole at the stance; else car park, walking legs and the route's end come to no more than the stance's own figure, or are given apart.</summary>
    [Fact]
    public void Walks_agree_with_each_other()
    {
        foreach (var (place, stance) in Coast.SelectMany(l => l.VantagePoints.Where(v => v.WalkInMinutes is not null).Select(v => (l, v))))
        {
            var first = place.Routes.Where(route => route.MayBeRecommended).OrderBy(route => route.Order).First();
            var ways = stance.Ways.Count > 0 ? stance.Ways.Select(way => (way.Route, way.WalkInMinutes, way.WalkOutMinutes, way.EndMinutes)) : [(first, null, null, 0)];
            foreach (var (route, walkIn, walkOut, end) in ways)
            {
                var parts = route.Parking[0].WalkMinutes + route.Legs.Where(leg => leg.Kind == LegKind.Walk).Sum(leg => leg.Minutes) + end;
                if (walkIn is not null)
                    Assert.True(walkIn >= stance.WalkInMinutes && walkOut >= stance.WalkOutMinutes, $"{stance.Name} by {route.Name}");
                else if (stance.Ways.Count == 0)
                    Assert.True(parts <= stance.WalkInMinutes && parts <= stance.WalkOutMinutes, $"{stance.Name} by {route.Name}: {parts}");
                else
                    Assert.True(parts is not null, $"{stance.Name} by {route.Name} is neither measured whole nor in parts");
            }
        }
    }

    [Fact]
    public void The_head_of_the_bar_is_reached_without_crossing_it_and_the_top_is_not()
    {
        var holm = Coast.Single(l => l.Slug == "sorrel-holm");
        var (head, top) = (holm.VantagePoints.Single(v => v.Slug == "bar-head"), holm.VantagePoints.Single(v => v.Slug == "holm-top"));

        Assert.DoesNotContain(Assert.Single(head.Ways).Route.Legs, leg => leg.TidalCut != TidalCut.Never);
        Assert.Contains(top.Ways[0].Route.Legs, leg => leg.TidalCut == TidalCut.Crossing && leg.Ground == LegGround.Weed);
        Assert.DoesNotContain(top.Ways, way => way.Route == head.Ways[0].Route);
    }

    /// <summary>Holds for any day of loading: no constructor depends on the season.</summary>
    [Theory]
    [InlineData("2024-02-29")]
    [InlineData("2026-12-31")]
    [InlineData("2027-07-01")]
    public void It_can_be_written_on_any_day(string day) => Assert.Equal(15, DemoGuide.Locations(NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value).Count);

    [Fact]
    public async Task Every_column_says_something_somewhere()
    {
        // The tide stations are a catalogue, elevation files and photos what people bring, not the demo's; nobody has an account in it. A wish is not a figure
        // somebody repeats; search text and slugs are written by the database's own rules.
        string[] meaningless = ["tide_lowest_is_repeated", "tide_highest_is_repeated", "ground_foreground_is_repeated",
            // No warden of the demo has decided anything yet.
            "made_by", "lift_asked_by", "lift_reason", "lifted_by", "lifted_at", "is_lifted_single_handed", "decided_by", "decided_at", "decision_words",
            // Nobody of the demo has told a near miss, and its closures were made with the guide.
            "made_at", "is_near_miss"];
        await using var connection = new NpgsqlConnection(site.Database.AppConnection);
        await connection.OpenAsync();
        var columns = new List<(string Table, string Column)>();
        await using (var command = new NpgsqlCommand("""
            SELECT table_name, column_name FROM information_schema.columns
            WHERE table_schema = 'public' AND table_name NOT IN ('__EFMigrationsHistory', 'data_protection_keys', 'tide_stations', 'tide_catalogue', 'elevation_files', 'skyline_jobs',
                'members', 'member_sessions', 'member_passkeys', 'recovery_codes', 'invitations', 'new_starts', 'audit_entries', 'sign_in_failures',
                'proposals', 'revisions', 'near_miss_tallies', 'near_miss_keys', 'photos', 'photo_files')
            """, connection))
        await using (var reader = await command.ExecuteReaderAsync())
            while (await reader.ReadAsync())
                columns.Add((reader.GetString(0), reader.GetString(1)));

        var silent = new List<string>();
        foreach (var (table, column) in columns.Where(c => !meaningless.Contains(c.Column)))
        {
#pragma warning disable CA2100 // Names come from the database's own catalogue.
            await using var command = new NpgsqlCommand($"SELECT EXISTS (SELECT 1 FROM {table} WHERE \"{column}\"::text NOT IN ('', 'false', '{{}}', '0'))", connection);
#pragma warning restore CA2100
            if (!(bool)(await command.ExecuteScalarAsync())!)
                silent.Add($"{table}.{column}");
        }
        Assert.Empty(silent);
        Assert.True(columns.Count > 150);
    }

    [Fact]
    public async Task Every_word_of_every_enum_is_used_somewhere()
    {
        await using var db = site.Open();
        var coast = await db.CoastAsync(new Reader(Role.Admin), Parts.All);
        // Places come with the notes and closures that count: those that have ended are asked for apart.
        object[] all = [.. coast, .. await db.HazardNotes.ToListAsync(), .. await db.Closures.ToListAsync()];
        var used = all.SelectMany(l => EnumsOf(l, [])).Distinct().GroupBy(v => v.GetType()).ToDictionary(g => g.Key, g => g.ToHashSet());
        // A ground wish for any ground is no wish; other datums come with charts from elsewhere.
        HashSet<Enum> unused = [GroundState.Any, TideDatum.MeanSeaLevel, TideDatum.LowestAstronomicalTide];
        // Days of the week are a set, not words: the demo need not shut something on each of them.
        foreach (var (type, values) in used.Where(pair => !pair.Key.IsDefined(typeof(FlagsAttribute), inherit: false)))
            Assert.Empty(Enum.GetValues(type).Cast<Enum>().Except(values).Except(unused));
        Assert.True(used.Count >= 22, string.Join(", ", used.Keys.Select(t => t.Name)));
    }

    [Fact]
    public void Every_sketch_named_exists_and_every_sketch_is_named()
    {
        var named = Points.Select(v => v.Sketch).Concat(Pictures.Select(c => c.Sketch)).OfType<string>().Order().ToList();
        Assert.Equal(named, Sketches.Names.Order());
        Assert.Equal(named.Count, named.Distinct().Count());
        Assert.All(Points, v => Assert.NotNull(v.Sketch));
        foreach (var name in named)
        {
            var drawing = Sketches.Inline(name)!.Value.Value;
            Assert.StartsWith("<svg ", drawing, StringComparison.Ordinal);
            Assert.DoesNotContain("style", drawing, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(" id=", drawing, StringComparison.Ordinal);
            Assert.Contains("<title>", drawing, StringComparison.Ordinal);
            Assert.InRange(drawing.Length, 500, 8000);
        }
        Assert.Null(Sketches.Inline("../secrets.svg"));
    }

    [Fact]
    public void No_text_promises_what_nobody_can()
    {
        var texts = Coast.SelectMany(l => TextsOf(l, [])).Concat(TextsOf(DemoGuide.Settings(), [])).Concat(DemoGuide.Cautions().SelectMany(c => TextsOf(c, [])));
        Assert.DoesNotContain(texts, text => text.Contains("safe", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>
    /// Held against the Natural Earth 1:10 million shore (public domain), which is good to about a kilometre: so 1.5 km.
    /// Subjects that stand in the sea must lie on its water side.
    /// </summary>
    [Fact]
    public void Vantage_points_lie_by_the_shore_and_offshore_subjects_in_the_water()
    {
        var drawn = Coastline.ClippedTo(new MapBox(-68.6, 44, -66.5, 45.3), 0);
        Assert.All(Points, v => Assert.InRange(ToShoreMetres(v.Position, drawn), 0, 1500));

        string[] offshore = ["Nearer stack", "The skerry", "Grey light on its island"];
        var subjects = Pictures.Select(c => c.Subject).OfType<Subject>().ToList();
        Assert.All(offshore, name => Assert.False(IsLand(subjects.Single(s => s.Name == name).Position, drawn), name));
        Assert.True(IsLand(subjects.Single(s => s.Name == "Highest hill across the bay").Position, drawn));
    }

    /// <summary>Subjects stand in their frames: each within half the lens's angle of the facing.</summary>
    [Fact]
    public void Every_subject_stands_in_its_frame() =>
        Assert.All(Points.SelectMany(v => v.Compositions.Where(c => c.Subject is not null).Select(c => (v, c))), p =>
        {
            var seen = p.c.Subject!.SeenFrom(p.v, 2);
            Assert.True(p.c.Frame.Contains(seen.Bearing.Degrees, seen.TopAltitudeDegrees ?? 0),
                string.Create(CultureInfo.InvariantCulture, $"{p.c.Name}: {p.c.Subject.Name} bears {seen.Bearing.Degrees:0.0}, top at {seen.TopAltitudeDegrees:0.00}"));
        });

    private static double ToShoreMetres(Position p, DrawnCoast coast)
    {
        var (kx, ky) = (111_195 * Math.Cos(double.DegreesToRadians(p.LatitudeDegrees)), 111_195.0);
        return coast.Shore.SelectMany(line => line.Zip(line.Skip(1))).Min(edge =>
        {
            var (ax, ay) = ((edge.First.LongitudeDegrees - p.LongitudeDegrees) * kx, (edge.First.LatitudeDegrees - p.LatitudeDegrees) * ky);
            var (dx, dy) = ((edge.Second.LongitudeDegrees - p.LongitudeDegrees) * kx - ax, (edge.Second.LatitudeDegrees - p.LatitudeDegrees) * ky - ay);
            var along = Math.Clamp(-(ax * dx + ay * dy) / Math.Max(dx * dx + dy * dy, 1e-9), 0, 1);
            return Math.Sqrt(Math.Pow(ax + along * dx, 2) + Math.Pow(ay + along * dy, 2));
        });
    }

    private static bool IsLand(Position p, DrawnCoast coast) => coast.Land.Any(piece => piece.Outer.Zip(piece.Outer.Skip(1)).Count(edge =>
        (edge.First.LatitudeDegrees > p.LatitudeDegrees) != (edge.Second.LatitudeDegrees > p.LatitudeDegrees)
        && p.LongitudeDegrees < (edge.Second.LongitudeDegrees - edge.First.LongitudeDegrees) * (p.LatitudeDegrees - edge.First.LatitudeDegrees)
            / (edge.Second.LatitudeDegrees - edge.First.LatitudeDegrees) + edge.First.LongitudeDegrees) % 2 == 1);

    private static IEnumerable<Enum> EnumsOf(object node, HashSet<object> seen) => ObjectGraph.Leaves(node, seen).OfType<Enum>();

    private static IEnumerable<string> TextsOf(object node, HashSet<object> seen) => ObjectGraph.Leaves(node, seen).OfType<string>();
}
