using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>A stance that does not exist yet, made from what was typed: where it belongs, the stance, its first picture, its hazards.</summary>
/// <param name="NewPlace">Null: it belongs to a place of the guide.</param>
public sealed record NewStance(Location? NewPlace, VantagePoint Stance, Composition Picture, IReadOnlyList<HazardRating> Ratings);

/// <summary>The questions of a new vantage point: those of a stance, those of a picture (<c>picture-…</c>), where it belongs, what is dangerous.</summary>
internal static class NewStanceSheet
{
    public const string Picture = "picture-";

    /// <summary>Value of the field <c>place</c> for one that the guide does not have.</summary>
    public const string AnotherPlace = "another";

    public const int MostRatings = 3;

    private static readonly SheetPart Belongs = new("Which place it belongs to",
    [
        new SheetField("place", "Place") { Longest = Slug.Longest, IsRequired = true },
        new SheetField("place-name", "Name of the new place") { Longest = 80 },
        new SheetField("place-summary", "The new place in a line or two", FieldKind.Text) { Longest = 200 },
        new SheetField("place-country", "Country, two letters") { Longest = 2, Hint = "ISO 3166, like US" },
        new SheetField("place-zone", "Time zone") { Longest = 60, Hint = "IANA name, like America/New_York" },
        SheetField.Of<Visibility>("place-visibility", "Who may see it", Words),
    ]);

    private static readonly SheetPart Dangers = new("What is dangerous there",
        [.. Enumerable.Range(1, MostRatings).SelectMany(i => (SheetField[])
        [
            SheetField.Of<HazardKind>($"hazard-{i}-kind", "Hazard", kind => kind.Words()),
            new SheetField($"hazard-{i}-severity", "Severity, 0 none known to 4 severe", FieldKind.Whole),
        ])]);

    private static readonly SheetPart Measured = new("How the position was got",
    [
        new SheetField("accuracy", "Stated accuracy of the position, metres", FieldKind.Number),
        new SheetField("marked-at", "Marked at"),
    ]);

    public static readonly Sheet Whole = new(
    [
        Belongs,
        .. VantageSheet.Whole.Parts.Where(part => part.Fields.All(field => field.Name != "says-who")),
        .. CompositionSheet.Whole.Parts.Select(part => part with { Fields = [.. part.Fields.Select(field => field with { Name = Picture + field.Name, IsRequired = field.IsRequired && field.Name is not ("name" or "summary") })] }),
        Dangers,
        Measured,
    ]);

    /// <summary>The questions about a place that the guide does not have yet.</summary>
    public static readonly IReadOnlyList<SheetPart> OfNewPlace = [Belongs with { Title = "The new place", Fields = [.. Belongs.Fields.Skip(1)] }];

    /// <summary>What most people would answer; anything typed goes before it.</summary>
    public static readonly IReadOnlyDictionary<string, string> Usual = new Dictionary<string, string>
    {
        [Picture + "focal-length"] = "24",
        [Picture + "sensor-width"] = "36",
        [Picture + "sensor-height"] = "24",
        [Picture + "orientation"] = nameof(Almanac.Camera.Orientation.Landscape),
    };

    public static IReadOnlyDictionary<string, string> Filled(IReadOnlyDictionary<string, string>? given)
    {
        if (given is null)
            return Usual;
        var filled = new Dictionary<string, string>(given);
        foreach (var (name, text) in Usual)
            filled.TryAdd(name, text);
        return filled;
    }

    /// <summary>The position as far as it can be read.</summary>
    public static Almanac.Earth.Position? Spot(IReadOnlyDictionary<string, string> given) => TypedPosition.Read(given.GetValueOrDefault("position")).Position;

    /// <summary>What would be published, or what is to be mended first. Nothing is stored.</summary>
    /// <param name="taken">Slugs of the place's vantage points and of all places.</param>
    public static (NewStance? Made, IReadOnlyList<FieldFault> Faults) Make(IReadOnlyDictionary<string, string> given, LocalDate today, IReadOnlySet<string> taken)
    {
        var answers = new Answers(given);
        List<FieldFault> faults = [.. Missing(answers)];
        if (faults.Count > 0)
            return (null, faults);
        try
        {
            var place = answers.Text("place") == AnotherPlace ? OfPlace(answers, taken) : null;
            var stance = new VantagePoint(SlugOf(answers.Text("name")!, taken), answers.Text("name")!, answers.Choice<VantageKind>("kind")!.Value,
                answers.Position("position")!.Value, answers.Choice<Footing>("footing")!.Value, answers.Text("summary")!)
                .CheckedAs(new FactCheck("A member of the club", today));
            faults.AddRange(VantageSheet.Whole.Write(stance, given));

            var ofPicture = given.Where(pair => pair.Key.StartsWith(Picture, StringComparison.Ordinal) && !string.IsNullOrWhiteSpace(pair.Value)).ToDictionary(pair => pair.Key[Picture.Length..], pair => pair.Value);
            ofPicture.TryAdd("name", answers.Text("name")!);
            ofPicture.TryAdd("summary", answers.Text("summary")!);
            var lights = new Answers(ofPicture);
            var picture = new Composition(SlugOf(ofPicture["name"], new HashSet<string>()), ofPicture["name"], ofPicture["summary"], 0, CompositionSheet.OfLens(lights), [.. lights.Several<WantedLight>("wanted")]);
            faults.AddRange(CompositionSheet.Whole.Write(picture, ofPicture).Select(fault => fault with { FieldId = Picture + fault.FieldId }));
            stance.Compose(picture);
            return faults.Count > 0 ? (null, faults) : (new(place, stance, picture, Rated(answers, stance, today)), []);
        }
        catch (AnswerException fault)
        {
            var isOfPicture = Whole.Field(fault.Fault.FieldId) is null;
            return (null, [.. faults, isOfPicture ? fault.Fault with { FieldId = Picture + fault.Fault.FieldId } : fault.Fault]);
        }
        catch (NotAcceptedException refused)
        {
            return (null, [.. faults, new("name", refused.Message)]);
        }
    }

    private static IEnumerable<FieldFault> Missing(Answers answers)
    {
        foreach (var field in Whole.Fields.Where(field => field.IsRequired && answers.Text(field.Name) is null && !(field.Name == Picture + "facing" && answers.Text(Picture + "compass") is not null)))
            yield return new(field.Name, Needed(field));
        if (answers.Text("place") == AnotherPlace)
            foreach (var name in (string[])["place-name", "place-summary", "place-country", "place-zone"])
                if (answers.Text(name) is null)
                    yield return new(name, $"A new place needs this: {Whole.Field(name)!.Label.ToLowerInvariant()}.");
    }

    private static string Needed(SheetField field) => field.Name switch
    {
        "place" => "Which place does it belong to? Choose the nearest, or another that the guide does not have yet.",
        "position" => "Where does the tripod stand? Use the phone's position, the map, or type it.",
        "name" => "What do you call the spot? A few words do.",
        "summary" => "What does one stand on, and what does one see? One line does.",
        Picture + "facing" => "Which way does the picture face? Turn on the spot, or enter degrees true.",
        Picture + "wanted" => "Which light is wanted? Choose at least one; any of those chosen suits.",
        _ => $"{field.Label}: this is needed. {(field.Choices.Count > 0 ? "Choose one." : "Fill it in.")}",
    };

    private static Location OfPlace(Answers answers, IReadOnlySet<string> taken) =>
        new Location(SlugOf(answers.Text("place-name")!, taken), answers.Text("place-name")!, answers.Position("position")!.Value,
            answers.Text("place-zone")!, answers.Text("place-country")!, null, int.MaxValue)
            .Describe(answers.Text("place-summary")!, answers.Text("place-summary")!)
            .ShowTo(answers.Choice<Visibility>("place-visibility") ?? Visibility.Members);

    private static IReadOnlyList<HazardRating> Rated(Answers answers, VantagePoint stance, LocalDate today) =>
        [.. from i in Enumerable.Range(1, MostRatings)
            let kind = answers.Choice<HazardKind>($"hazard-{i}-kind")
            where kind is not null
            group i by kind.Value into one
            select new HazardRating(one.Key, answers.Whole($"hazard-{one.First()}-severity"), new FactCheck("A member of the club", today), stance)];

    /// <summary>An address made of the name, told apart by a number where it is taken.</summary>
    public static string SlugOf(string name, IReadOnlySet<string> taken)
    {
        var words = SearchWords.Fold(name).Where(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == ' ');
        var slug = string.Join('-', string.Concat(words).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        slug = (slug.Length <= Slug.Longest - 4 ? slug : slug[..(Slug.Longest - 4)]).Trim('-');
        if (slug.Length == 0)
            slug = "spot";
        return Enumerable.Range(1, 999).Select(i => i == 1 ? slug : $"{slug}-{i}").First(each => !taken.Contains(each) && Slug.IsFree(each));
    }

    private static string Words(Visibility visibility) => visibility switch
    {
        Visibility.Public => "everybody",
        Visibility.Members => "members of the club",
        _ => "sensitive: wardens, you, and members named; others see the square kilometre",
    };
}
