using System.Globalization;
using System.Text;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;
using Snapshooter.Xunit3;

namespace Foreshore.Almanac.Light;

public class GoldenSheetTests
{
    [Fact]
    public void One_place_one_date_as_text()
    {
        var observer = new Observer(Coast.Eastport, 14, Coast.Bay);
        var wanted = new[]
        {
            WantedLight.SunInFrame, WantedLight.SunburstOverSkyline, WantedLight.GoldenLight, WantedLight.TwilightGlow,
            WantedLight.BlueLight, WantedLight.SideLight, WantedLight.GalaxyCore,
        };
        var scene = Coast.Scene(observer, 110, wanted);
        var date = new LocalDate(2026, 10, 3);
        var sessions = Sessions.On(date, Coast.Eastport, Coast.NewYork, Coast.Year2026.Sun);
        var sun = SunDays.On(date, observer, Coast.NewYork, Coast.Year2026.Sun);

        var sheet = new StringBuilder();
        Line($"{date:uuuu-MM-dd}, 44.9 N 66.99 W, eye 14 m, facing 110°, 24 mm on 36 × 24 mm");
        Line($"sun over the skyline {Clock(sun.Rise)} to {Clock(sun.Set)}, by the printed tables' rule {Clock(sun.StandardRise)} to {Clock(sun.StandardSet)}");
        foreach (var session in sessions.All)
        {
            sheet.Append('\n');
            Line($"{session.Kind}: {Clock(session.Start)} to {Clock(session.End)}{Mark("nearly dark", session.NearlyDark)}{Mark("dark", session.Dark)}");
            var answer = LightRuns.Between(scene, session.Start, session.End, Coast.Year2026);
            foreach (var run in answer.Runs)
                Line($"  {LightTable.Of(run.Light).Name}: {Clock(run.Start)} to {Clock(run.End)}");
            foreach (var run in answer.Possible)
                Line($"  {LightTable.Of(run.Light).Name}, not known: {Clock(run.Start)} to {Clock(run.End)}");
            Line($"  together: {string.Join(", ", answer.Union.Select(window => $"{Clock(window.Start)} to {Clock(window.End)}"))}");
            Line($"  skyline: {answer.Skyline}");
        }

        sheet.ToString().MatchSnapshot();

        void Line(FormattableString text) => sheet.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }

    private static string Mark(string name, Interval? interval) =>
        interval is { } marked ? $", {name} {Clock(marked.Start)} to {Clock(marked.End)}" : "";

    // To the minute, as it is printed: noise in the last digits of a processor must not break the sheet.
    private static string Clock(Instant? time) =>
        time is { } known ? (known + Duration.FromSeconds(30)).InZone(Coast.NewYork).ToString("dd HH:mm x", CultureInfo.InvariantCulture) : "never";
}
