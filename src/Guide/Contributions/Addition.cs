using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Contributions;

/// <summary>Something that the guide does not have yet, made from its sheet's texts and then added to its place or vantage point.</summary>
/// <param name="Stance">What a composition is added to; null for what belongs to the place.</param>
internal sealed record Addition(Matter Matter, Location Place, VantagePoint? Stance = null)
{
    private static readonly Sheet<WayAt> Lots = new(WaySheets.Lots);

    private object? made;

    /// <summary>What it is added to.</summary>
    public string To => Stance?.Name ?? Place.Name;

    public IReadOnlyDictionary<string, string> Read() => made switch
    {
        null => Matter.Sheet().Fields.ToDictionary(field => field.Name, _ => ""),
        Composition picture => CompositionSheet.Whole.Read(picture),
        ParkingArea area => AccessSheets.Parking.Read(area),
        OvernightRule rule => new Dictionary<string, string>(AccessSheets.Overnight.Read(rule)) { ["sleeper"] = rule.Sleeper.ToString() },
        AccessRoute route => new Dictionary<string, string>(AccessSheets.Leg.Read(route.Legs[0]).Concat(Lots.Read(new(route, Place)))) { ["way"] = route.Name, ["leg-kind"] = route.Legs[0].Kind.ToString() },
        _ => throw new InvalidOperationException(made.GetType().Name),
    };

    /// <summary>Makes it; faults stand beside their fields, and nothing is added then.</summary>
    public IReadOnlyList<FieldFault> Write(IReadOnlyDictionary<string, string> given)
    {
        var answers = new Answers(given);
        List<FieldFault> faults = [.. Matter.Sheet().Fields.Where(field => field.IsRequired && answers.Text(field.Name) is null)
            .Select(field => new FieldFault(field.Name, $"{field.Label}: this is needed. {(field.Choices.Count > 0 ? "Choose one." : "Fill it in.")}"))];
        if (faults.Count > 0)
            return faults;
        try
        {
            (made, var rest) = Make(answers, given.Where(pair => pair.Value.Length > 0).ToDictionary(pair => pair.Key, pair => pair.Value));
            return rest;
        }
        catch (AnswerException fault)
        {
            return [fault.Fault];
        }
        catch (NotAcceptedException refused)
        {
            return [new(Matter.Sheet().Fields.First().Name, refused.Message)];
        }
    }

    /// <summary>Adds what was made; its number is there once it is saved.</summary>
    /// <returns>It, and its number, to be asked for after saving.</returns>
    public (Func<int> Id, object Thing) Attach(IReadOnlySet<string> taken)
    {
        switch (made)
        {
            case Composition picture:
                picture.ChangeSlug(NewStanceSheet.SlugOf(picture.Name, taken));
                Stance!.Compose(picture);
                return (() => picture.Id, picture);
            case ParkingArea area:
                Place.AddParking(area);
                return (() => area.Id, area);
            case OvernightRule rule:
                Place.AddOvernightRule(rule);
                return (() => rule.Id, rule);
            case AccessRoute route:
                Place.Add(route);
                return (() => route.Legs[0].Id, route.Legs[0]);
            default:
                throw new InvalidOperationException("Nothing was made yet.");
        }
    }

    private (object Made, IReadOnlyList<FieldFault> Faults) Make(Answers answers, Dictionary<string, string> given)
    {
        switch (Matter)
        {
            case Matter.NewPicture:
                var picture = new Composition("picture", answers.Text("name")!, answers.Text("summary")!, 0, CompositionSheet.OfLens(answers), [.. answers.Several<WantedLight>("wanted")]);
                return (picture, CompositionSheet.Whole.Write(picture, given));
            case Matter.NewParking:
                var area = new ParkingArea(answers.Text("name")!, answers.Position("position") ?? default(Position), answers.Text("surface")!, AccessSheets.Check(answers, null));
                return (area, AccessSheets.Parking.Write(area, given));
            case Matter.NewOvernight:
                var rule = new OvernightRule(answers.Choice<Sleeper>("sleeper")!.Value, OvernightStanding.Unknown, AccessSheets.Check(answers, null));
                return (rule, AccessSheets.Overnight.Write(rule, given));
            case Matter.NewWay:
                var leg = Leg.Named(answers.Choice<LegKind>("leg-kind")!.Value, answers.Text("name")!, answers.Choice<LegalStatus>("legal-status")!.Value, AccessSheets.Check(answers, null));
                var route = new AccessRoute(answers.Text("way")!, int.MaxValue).Then(leg);
                if (leg.Kind == LegKind.Ferry && answers.Text(FerrySheet.CrossingMinutes) is null)
                    throw Answers.Fault(FerrySheet.CrossingMinutes, "How many minutes does the crossing take? A ferry is not kept without.");
                return (route, [.. AccessSheets.Leg.Write(leg, given), .. Lots.Write(new(route, Place), given)]);
            default:
                throw new InvalidOperationException($"{Matter} is no addition.");
        }
    }
}
