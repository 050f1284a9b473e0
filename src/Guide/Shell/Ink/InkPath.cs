using System.Globalization;
using System.Text;

namespace Foreshore.Guide.Shell.Ink;

/// <summary>
/// The <c>d</c> of an SVG path, written short: one decimal, no needless blanks, and every step relative to the last
/// written point, so that rounding never adds up along a long shore.
/// </summary>
public sealed class InkPath
{
    private readonly StringBuilder text = new();
    private long x, y;

    /// <summary>A number as it stands in an attribute: at most one decimal, never a comma.</summary>
    public static string Number(double value) => Tenths((long)Math.Round(value * 10));

    /// <summary>A share of the drawing's width as it stands in an attribute: two decimals and the sign.</summary>
    public static string Percent(double share) =>
        Math.Round(share * 100, 2).ToString("0.##", CultureInfo.InvariantCulture) + "%";

    public static string Line(IEnumerable<(double X, double Y)> points) => new InkPath().Through(points).ToString();

    public static string Area(IEnumerable<(double X, double Y)> points) => new InkPath().Through(points).Close().ToString();

    /// <summary>Adds a run of straight pieces; points that fall on the last one in print are left out.</summary>
    public InkPath Through(IEnumerable<(double X, double Y)> points)
    {
        var first = true;
        foreach (var point in points)
        {
            var (toX, toY) = ((long)Math.Round(point.X * 10), (long)Math.Round(point.Y * 10));
            if (first) text.Append('M').Append(Tenths(toX)).Append(Separated(toY));
            else if (toX == x && toY == y) continue;
            else if (toY == y) text.Append('h').Append(Tenths(toX - x));
            else if (toX == x) text.Append('v').Append(Tenths(toY - y));
            else text.Append('l').Append(Tenths(toX - x)).Append(Separated(toY - y));
            (x, y, first) = (toX, toY, false);
        }
        return this;
    }

    /// <summary>Joins the run to its beginning. The next run must begin anew, as <see cref="Through"/> does.</summary>
    public InkPath Close()
    {
        text.Append('z');
        return this;
    }

    public override string ToString() => text.ToString();

    private static string Tenths(long tenths)
    {
        var whole = (Math.Abs(tenths) / 10).ToString(CultureInfo.InvariantCulture);
        var rest = Math.Abs(tenths) % 10;
        return (tenths < 0 ? "-" : "") + (rest == 0 ? whole : (whole == "0" ? "" : whole) + "." + rest.ToString(CultureInfo.InvariantCulture));
    }

    private static string Separated(long tenths) => tenths < 0 ? Tenths(tenths) : " " + Tenths(tenths);
}
