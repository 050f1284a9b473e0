using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>What a proposal is about. The kind of thing; which one it is, or that it is a new one, stands beside it.</summary>
public enum Matter { NewStance, Place, Stance, Picture, Leg, Parking, Overnight, Rating }

public static class MatterWords
{
    public static string Words(this Matter matter) => matter switch
    {
        Matter.NewStance => "new vantage point",
        Matter.Place => "place",
        Matter.Stance => "vantage point",
        Matter.Picture => "composition",
        Matter.Leg => "way in",
        Matter.Parking => "car park",
        Matter.Overnight => "rule about nights",
        Matter.Rating => "hazard rating",
        _ => throw new ArgumentOutOfRangeException(nameof(matter), matter, "No such matter."),
    };

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
        _ => throw new ArgumentOutOfRangeException(nameof(matter), matter, "No such matter."),
    };
}

/// <summary>A thing of the guide that proposals and revisions speak of, read and written through its sheet.</summary>
public sealed record Published(Matter Matter, int Id, Location Place, object Thing)
{
    public IReadOnlyDictionary<string, string> Read() => Thing switch
    {
        Location place => PlaceSheet.Whole.Read(place),
        VantagePoint stance => VantageSheet.Whole.Read(stance),
        Composition picture => CompositionSheet.Whole.Read(picture),
        Leg leg => AccessSheets.Leg.Read(leg),
        ParkingArea area => AccessSheets.Parking.Read(area),
        OvernightRule rule => AccessSheets.Overnight.Read(rule),
        HazardRating rating => PlaceSheet.Rating.Read(rating),
        _ => throw new InvalidOperationException($"{Thing.GetType().Name} has no sheet."),
    };

    public IReadOnlyList<Shell.FieldFault> Write(IReadOnlyDictionary<string, string> given) => Thing switch
    {
        Location place => PlaceSheet.Whole.Write(place, given),
        VantagePoint stance => VantageSheet.Whole.Write(stance, given),
        Composition picture => CompositionSheet.Whole.Write(picture, given),
        Leg leg => AccessSheets.Leg.Write(leg, given),
        ParkingArea area => AccessSheets.Parking.Write(area, given),
        OvernightRule rule => AccessSheets.Overnight.Write(rule, given),
        HazardRating rating => PlaceSheet.Rating.Write(rating, given),
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
        HazardRating rating => rating.Kind.Words(),
        _ => "",
    };

    /// <summary>Where it is read in the guide.</summary>
    public string Address => Thing switch
    {
        VantagePoint stance => stance.Address(Place),
        Composition { VantagePoint: { } stance } picture => picture.Address(Place, stance),
        _ => Place.Address(),
    };
}
