using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;

namespace Foreshore.Almanac.Camera;

internal sealed class CameraChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Camera/angle-of-view.csv"), "Camera: angle of view", (log, row) =>
        {
            var sensor = new Sensor(row.Number("width"), row.Number("height"));
            var landscape = new Lens(row.Number("focalLength"), sensor, Orientation.Landscape);
            var portrait = new Lens(row.Number("focalLength"), sensor, Orientation.Portrait);
            log.Compare(row.Number("horizontal"), landscape.HorizontalAngleDegrees, 0.06);
            log.Compare(row.Number("vertical"), landscape.VerticalAngleDegrees, 0.06);
            log.Compare(row.Number("diagonal"), landscape.DiagonalAngleDegrees, 0.06);
            log.Compare(row.Number("vertical"), portrait.HorizontalAngleDegrees, 0.06);
            log.Compare(row.Number("horizontal"), portrait.VerticalAngleDegrees, 0.06);
        });

        yield return Check.Against(PublishedTable.Read("Camera/pinhole-projection.csv"), "Camera: place on the sensor, level camera", (log, row) =>
        {
            var lens = new Lens(row.Number("focalLength"), Sensor.FullFrame, Orientation.Landscape);
            var point = new Frame(Bearing.FromDegrees(350), 0, lens).Project(350 + row.Number("turn"), row.Number("altitude"))!.Value;
            log.Compare(row.Number("x"), point.XMm, 0.006);
            log.Compare(row.Number("y"), point.YMm, 0.006);
        });
    }
}
