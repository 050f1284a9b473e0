using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>What a proposal is about. The kind of thing; which one it is, or that it is a new one, stands beside it.</summary>
public enum Matter { NewStance, Place, Stance, Picture, Leg, Parking, Overnight, Rating, NewPicture, NewParking, NewOvernight, NewWay, Tide, Way, OwnWays }

public static class MatterWords
{
    public static string Words(this Matter matter) => matter switch
    {
        Matter.NewStance => "new vantage point",
        Matter.Place => "place",
        Matter.Stance => "vantage point",
        Matter.Picture => "composition",
        Matter.Leg => "leg of a way in",
        Matter.Parking => "car park",
        Matter.Overnight => "rule about nights",
        Matter.Rating => "hazard rating",
        Matter.NewPicture => "new composition",
        Matter.NewParking => "new car park",
        Matter.NewOvernight => "new rule about nights",
        Matter.NewWay => "new way in",
        Matter.Tide => "place’s tide",
        Matter.Way => "way in",
        Matter.OwnWays => "vantage point’s ways",
        _ => throw new ArgumentOutOfRangeException(nameof(matter), matter, "No such matter."),
    };

    /// <summary>Something that the guide does not have yet: its proposal names what it is added to, a place or a vantage point.</summary>
    public static bool IsNew(this Matter matter) => matter is Matter.NewStance or Matter.NewPicture or Matter.NewParking or Matter.NewOvernight or Matter.NewWay;

    /// <summary>What something new is once it is in the guide.</summary>
    public static Matter Becomes(this Matter matter) => matter switch
    {
        Matter.NewStance => Matter.Stance,
        Matter.NewPicture => Matter.Picture,
        Matter.NewParking => Matter.Parking,
        Matter.NewOvernight => Matter.Overnight,
        Matter.NewWay => Matter.Leg,
        _ => matter,
    };

    /// <summary>A limit that lives may hang on is among the texts: for something new, one that was filled in.</summary>
    public static bool IsGuarded(this Matter matter, IReadOnlyDictionary<string, string> given) =>
        given.Any(pair => matter.Sheet().Field(pair.Key) is { IsGuarded: true } && (!matter.IsNew() || pair.Value.Length > 0));

    /// <summary>The fields that can be proposed for it.</summary>
    public static Sheet Sheet(this Matter matter) => matter switch
    {
        Matter.NewStance => NewStanceSheet.Whole,
        Matter.Place => PlaceSheet.Whole,
        Matter.Stance => VantageSheet.Whole,
        Matter.Picture => CompositionSheet.Whole,
        Matter.Leg => AccessSheets.Leg,
        Matter.Parking => AccessSheets.Parking,
        Matter.Overnight => AccessSheets.Overnight,
        Matter.Rating => PlaceSheet.Rating,
        Matter.NewPicture => CompositionSheet.Whole,
        Matter.NewParking => AccessSheets.Parking,
        Matter.NewOvernight => AccessSheets.NewOvernight,
        Matter.NewWay => AccessSheets.NewWay,
        Matter.Tide => PlaceSheet.Tide,
        Matter.Way => WaySheets.Way,
        Matter.OwnWays => WaySheets.Own,
        _ => throw new ArgumentOutOfRangeException(nameof(matter), matter, "No such matter."),
    };
}

/// <summary>A thing of the guide that proposals and revisions speak of, read and written through its sheet.</summary>
public sealed record Published(Matter Matter, int Id, Location Place, object Thing)
{
    public IReadOnlyDictionary<string, string> Read() => Thing switch
    {
        Location place when Matter == Matter.Tide => PlaceSheet.Tide.Read(place),
        Location place => PlaceSheet.Whole.Read(place),
        VantagePoint stance => VantageSheet.Whole.Read(stance),
        Composition picture => CompositionSheet.Whole.Read(picture),
        Leg leg => AccessSheets.Leg.Read(leg),
        ParkingArea area => AccessSheets.Parking.Read(area),
        OvernightRule rule => AccessSheets.Overnight.Read(rule),
        WayAt way => WaySheets.Way.Read(way),
        OwnWays own => WaySheets.Own.Read(own),
        HazardRating rating => PlaceSheet.Rating.Read(rating),
        Addition addition => addition.Read(),
        _ => throw new InvalidOperationException($"{Thing.GetType().Name} has no sheet."),
    };

    public IReadOnlyList<Shell.FieldFault> Write(IReadOnlyDictionary<string, string> given) => Thing switch
    {
        Location place when Matter == Matter.Tide => PlaceSheet.Tide.Write(place, given),
        Location place => PlaceSheet.Whole.Write(place, given),
        VantagePoint stance => VantageSheet.Whole.Write(stance, given),
        Composition picture => CompositionSheet.Whole.Write(picture, given),
        Leg leg => AccessSheets.Leg.Write(leg, given),
        ParkingArea area => AccessSheets.Parking.Write(area, given),
        OvernightRule rule => AccessSheets.Overnight.Write(rule, given),
        WayAt way => WaySheets.Way.Write(way, given),
        OwnWays own => WaySheets.Own.Write(own, given),
        HazardRating rating => PlaceSheet.Rating.Write(rating, given),
        Addition addition => addition.Write(given),
        _ => throw new InvalidOperationException($"{Thing.GetType().Name} has no sheet."),
    };

    public string Name => Thing switch
    {
        Location place => place.Name,
        VantagePoint stance => stance.Name,
        Composition picture => picture.Name,
        Leg leg => leg.Name,
        ParkingArea area => area.Name,
        OvernightRule rule => rule.Sleeper.Words(),
        WayAt way => way.Route.Name,
        OwnWays own => own.Stance.Name,
        HazardRating rating => rating.Kind.Words(),
        Addition addition => addition.To,
        _ => "",
    };

    /// <summary>What its form asks: only of a ferry what a ferry has.</summary>
    public IReadOnlyList<SheetPart> Parts => Thing is Leg { Kind: not LegKind.Ferry } ? [.. Matter.Sheet().Parts.Where(part => part != FerrySheet.Part)] : Matter.Sheet().Parts;

    /// <summary>Names of the place's own things that a field may choose among.</summary>
    public IReadOnlyList<string> Names(SheetField field) => field.Names switch
    {
        NameList.CarParks => [.. Place.Parking.Select(lot => lot.Name)],
        NameList.Ways => [.. Place.Routes.OrderBy(route => route.Order).Select(route => route.Name)],
        _ => [],
    };

    /// <summary>Where it is read in the guide.</summary>
    public string Address => Thing switch
    {
        Location place when Matter == Matter.Tide => $"{place.Address()}/tide",
        VantagePoint stance => stance.Address(Place),
        OwnWays own => own.Stance.Address(Place),
        Composition { VantagePoint: { } stance } picture => picture.Address(Place, stance),
        Addition { Stance: { } stance } => stance.Address(Place),
        _ => Place.Address(),
    };
}
