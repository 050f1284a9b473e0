using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>What a member can say of a picture: which way, through what, in which light, tide and sea.</summary>
internal static class CompositionSheet
{
    private static readonly SheetPart<Composition> Called = new("What is photographed",
    [
        new SheetField("name", "Name of the picture") { Longest = 80, IsRequired = true, Hint = "Like Stack with the first light" },
        new SheetField("summary", "What it is, in a line or two", FieldKind.Text) { Longest = 600, IsRequired = true },
    ],
        picture => [picture.Name, picture.Summary],
        (picture, answers) => picture.Call(answers.Text("name") ?? "", answers.Text("summary") ?? ""));

    private static readonly SheetPart<Composition> Facing = new("Which way it faces",
    [
        new SheetField("facing", "Facing, degrees true", FieldKind.Number) { IsRequired = true, Hint = "0 is true north, 90 east. With a compass reading below, this follows from it" },
        new SheetField("tilt", "Tilt, degrees above the level", FieldKind.Number),
        new SheetField("compass", "Compass reading, degrees", FieldKind.Number) { Hint = "As read, magnetic; leave empty when the facing is true" },
        new SheetField("declination", "Declination, degrees, east positive", FieldKind.Number),
        new SheetField("compass-read", "Read on", FieldKind.Date),
        new SheetField("compass-model", "Declination by the model") { Longest = 20 },
    ],
        picture => [Written.Of(picture.FacingDegrees), Written.Of(picture.TiltDegrees), Written.Of(picture.Compass?.ReadingDegrees), Written.Of(picture.Compass?.DeclinationDegrees),
            Written.Of(picture.Compass?.ReadOn), picture.Compass?.Model ?? ""],
        (picture, answers) =>
        {
            picture.Face(answers.Needed("facing", answers.Number("facing"), "Which way does the picture face? Enter degrees true, 0 to just under 360."), answers.Number("tilt") ?? 0);
            if (answers.Number("compass") is { } reading)
                picture.FaceByCompass(new CompassReading(reading,
                    answers.Needed("declination", answers.Number("declination"), "By how much does the compass differ from true north there? Enter degrees, east positive."),
                    answers.Needed("compass-read", answers.Date("compass-read"), "On which day was the compass read? The declination drifts."), answers.Text("compass-model")));
        });

    private static readonly SheetPart<Composition> Seen = new("The lens",
    [
        new SheetField("focal-length", "Focal length, millimetres", FieldKind.Number) { IsRequired = true },
        new SheetField("sensor-width", "Sensor width, millimetres", FieldKind.Number) { IsRequired = true, Hint = "Full frame 36 × 24, APS-C 23.5 × 15.6, Four Thirds 17.3 × 13, medium format 43.8 × 32.9" },
        new SheetField("sensor-height", "Sensor height, millimetres", FieldKind.Number) { IsRequired = true },
        SheetField.Of<Orientation>("orientation", "Held", way => way == Orientation.Landscape ? "longer side level" : "longer side upright").Required(),
    ],
        picture => [Written.Of(picture.FocalLengthMm), Written.Of(picture.SensorWidthMm), Written.Of(picture.SensorHeightMm), Written.Of<Orientation>(picture.Orientation)],
        (picture, answers) => picture.Use(OfLens(answers)));

    private static readonly SheetPart<Composition> Light = new("Wanted light",
    [
        SheetField.Of<WantedLight>("wanted", "Any of these suits", light => light.Words(), FieldKind.Several).Required(),
        SheetField.YesOrNo("galaxy-from-five", "The galaxy's core counts from 5 degrees up, over a clear sea horizon"),
    ],
        picture => [Written.Of(picture.Wanted), Written.Of(picture.GalaxyFromFiveDegrees)],
        (picture, answers) => picture.Want([.. answers.Several<WantedLight>("wanted")]).GalaxyFromFive(answers.Yes("galaxy-from-five")));

    private static readonly SheetPart<Composition> Subject = new("The subject",
    [
        new SheetField("subject", "What stands in the picture") { Longest = 80 },
        new SheetField("subject-position", "Its position", FieldKind.Position),
        new SheetField("subject-base", "Height of its foot above mean sea level, metres", FieldKind.Number),
        new SheetField("subject-height", "Its height from foot to top, metres", FieldKind.Number),
    ],
        picture => picture.Subject is not { } subject ? ["", "", "", ""]
            : [subject.Name, Written.Of(subject.Position), Written.Of(subject.BaseMetresAboveMeanSea), Written.Of(subject.HeightMetres)],
        (picture, answers) => picture.Show(answers.Text("subject") is not { } name ? null : new Subject(name,
            answers.Needed("subject-position", answers.Position("subject-position"), "Where does the subject stand? Enter a position."),
            answers.Needed("subject-base", answers.Number("subject-base"), "How high above mean sea level is the subject's foot? Enter metres."),
            answers.Needed("subject-height", answers.Number("subject-height"), "How high is the subject from foot to top? Enter metres."))));

    private static readonly SheetPart<Composition> Kit = new("Water and kit",
    [
        SheetField.Of<WaterLook>("water", "How the water should look", look => look.Words()),
        new SheetField("kit", "Kit notes", FieldKind.Text) { Longest = 400 },
    ],
        picture => [Written.Of<WaterLook>(picture.Water), picture.KitNotes ?? ""],
        (picture, answers) => picture.LookOfWater(answers.Choice<WaterLook>("water") ?? WaterLook.Any).Take(answers.Text("kit")));

    public static readonly Sheet<Composition> Whole = new([Called, Facing, Seen, Light, Subject, .. CompositionWishes.Parts, Kit]);

    public static Lens OfLens(Answers answers)
    {
        var (focal, width, height) = (answers.Number("focal-length"), answers.Number("sensor-width"), answers.Number("sensor-height"));
        if (focal is not > 0) throw Answers.Fault("focal-length", "Which focal length, in millimetres? Enter the lens's own, like 24.");
        if (width is not > 0) throw Answers.Fault("sensor-width", "How wide is the sensor, in millimetres? A full frame has 36.");
        if (height is not > 0) throw Answers.Fault("sensor-height", "How high is the sensor, in millimetres? A full frame has 24.");
        return new Lens(focal.Value, new Sensor(width.Value, height.Value), answers.Choice<Orientation>("orientation") ?? Orientation.Landscape);
    }
}
