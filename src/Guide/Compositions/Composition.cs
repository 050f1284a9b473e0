using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Compositions;

/// <summary>How the water should look; shutter times are a club setting, see the cautions of the water look.</summary>
public enum WaterLook { Any, Frozen, SoftMovement, Streaks, FlowingFormKept, Smooth }

/// <summary>What is photographed from a vantage point.</summary>
public sealed class Composition
{
    private Composition() { }

    public Composition(string slug, string name, string summary, double facingDegrees, Lens lens, params WantedLight[] wanted)
    {
        Slug = Locations.Slug.Of(slug);
        Name = Require.Text(name, 80, "The composition's name");
        Summary = Require.Text(summary, 600, "The summary");
        Face(facingDegrees);
        Use(lens);
        Want(wanted);
    }

    public int Id { get; private set; }

    public int VantagePointId { get; private set; }

    public VantagePoint? VantagePoint { get; private set; }

    public string Slug { get; private set; } = "";

    public string Name { get; private set; } = "";

    public string Summary { get; private set; } = "";

    /// <summary>Direction of the lens's axis, degrees true, 0 up to 360.</summary>
    public double FacingDegrees { get; private set; }

    /// <summary>How the facing was read from a compass, where it was; the true value is <see cref="FacingDegrees"/>.</summary>
    public CompassReading? Compass { get; private set; }

    /// <summary>Axis above (positive) or below the level, degrees.</summary>
    public double TiltDegrees { get; private set; }

    public double FocalLengthMm { get; private set; }

    public double SensorWidthMm { get; private set; }

    public double SensorHeightMm { get; private set; }

    public Orientation Orientation { get; private set; }

    public Subject? Subject { get; private set; }

    /// <summary>One or more; any of them suits.</summary>
    public IReadOnlyList<WantedLight> Wanted { get; private set; } = [];

    /// <summary>Over a clear sea horizon the galaxy's core is wanted from 5 degrees up instead of 10.</summary>
    public bool GalaxyFromFiveDegrees { get; private set; }

    /// <summary>Null: any tide.</summary>
    public TideWish? Tide { get; private set; }

    public GroundWish? Ground { get; private set; }

    /// <summary>Null: any sea.</summary>
    public SeaWish? Sea { get; private set; }

    public WaterLook Water { get; private set; }

    public string? KitNotes { get; private set; }

    /// <summary>Drawn sketch, a file name under the site's sketches; null: the vantage point's counts.</summary>
    public string? Sketch { get; private set; }

    public uint Version { get; private set; }

    public Bearing Facing => Bearing.FromDegrees(FacingDegrees);

    public Lens Lens => new(FocalLengthMm, new Sensor(SensorWidthMm, SensorHeightMm), Orientation);

    public Frame Frame => new(Facing, TiltDegrees, Lens);

    /// <summary>The scene the almanac computes: this frame and wanted light, seen from the vantage point's eye.</summary>
    public Scene ToScene(VantagePoint vantagePoint, double? meanSeaLevelAboveChartDatumMetres) =>
        new(new Observer(vantagePoint.Position, vantagePoint.EyeMetresAboveMeanSea(meanSeaLevelAboveChartDatumMetres), vantagePoint.Skyline), Frame, Wanted, GalaxyFromFiveDegrees);

    public Scene ToScene(VantagePoint vantagePoint, Location location) => ToScene(vantagePoint, location.MeanSeaLevelAboveChartDatumMetres);

    public Composition Call(string name, string summary)
    {
        Name = Require.Text(name, 80, "The composition's name");
        Summary = Require.Text(summary, 600, "The summary");
        return this;
    }

    public Composition Face(double degreesTrue, double tiltDegrees = 0)
    {
        FacingDegrees = Require.Degrees(degreesTrue, "The facing");
        TiltDegrees = Require.Between(tiltDegrees, -80, 80, "The tilt", "degrees");
        Compass = null;
        return this;
    }

    /// <summary>Sets the facing from a compass; reading, declination and true value are kept.</summary>
    public Composition FaceByCompass(CompassReading reading)
    {
        (Compass, FacingDegrees) = (reading, reading.TrueDegrees);
        return this;
    }

    public Composition Use(Lens lens)
    {
        FocalLengthMm = Require.Between(lens.FocalLengthMm, 1, 3000, "The focal length", "mm");
        SensorWidthMm = Require.Between(lens.Sensor.WidthMm, 1, 200, "The sensor's width", "mm");
        SensorHeightMm = Require.Between(lens.Sensor.HeightMm, 1, 200, "The sensor's height", "mm");
        Orientation = lens.Orientation;
        return this;
    }

    public Composition Want(params WantedLight[] wanted)
    {
        Require.That(wanted.Length > 0, "Which light is wanted? Choose at least one; any of those chosen suits.");
        Wanted = [.. wanted.Distinct()];
        return this;
    }

    public Composition GalaxyFromFive(bool from = true)
    {
        Require.That(!from || Wanted.Contains(WantedLight.GalaxyCore), "The lower limit is for the galaxy's core alone. Add that light first.");
        GalaxyFromFiveDegrees = from;
        return this;
    }

    public Composition WishTide(TideWish? wish)
    {
        Tide = wish;
        return this;
    }

    public Composition WishGround(GroundWish? wish)
    {
        Ground = wish;
        return this;
    }

    public Composition WishSea(SeaWish? wish)
    {
        Sea = wish;
        return this;
    }

    public Composition LookOfWater(WaterLook look)
    {
        Water = look;
        return this;
    }

    public Composition Take(string? kitNotes)
    {
        KitNotes = Require.TextOrNull(kitNotes, 400, "The kit notes");
        return this;
    }

    public Composition Show(Subject? subject)
    {
        Subject = subject;
        return this;
    }

    public Composition Sketched(string fileName)
    {
        Sketch = SketchName.Of(fileName);
        return this;
    }

    public Composition ChangeSlug(string slug)
    {
        Slug = Locations.Slug.Of(slug);
        return this;
    }
}
