using System.Globalization;

namespace Foreshore.Almanac.Checks;

/// <summary>Gathers the errors of one check.</summary>
public sealed class CheckLog
{
    private readonly List<string> broken = [];
    private double squares;
    private string where = "";

    /// <summary>How many values were compared.</summary>
    public int Cases { get; private set; }

    /// <summary>Cases in which the sources may rightly differ, such as a sun that only grazes the horizon.</summary>
    public int Excused { get; private set; }

    /// <summary>The largest error without sign.</summary>
    public double Largest { get; private set; }

    /// <summary>The largest error as a share of its own tolerance.</summary>
    public double LargestShare { get; private set; }

    /// <summary>Root of the mean square of the errors.</summary>
    public double RootMeanSquare => Cases == 0 ? 0 : Math.Sqrt(squares / Cases);

    /// <summary>What broke its tolerance, in words; the first few.</summary>
    public IReadOnlyList<string> Broken => broken;

    /// <summary>Names the case at hand for messages.</summary>
    public void At(string caseText) => where = caseText;

    /// <summary>Records an error and the tolerance it must keep.</summary>
    public void Add(double error, double tolerance)
    {
        Cases++;
        error = Math.Abs(error);
        squares += error * error;
        Largest = Math.Max(Largest, error);
        LargestShare = Math.Max(LargestShare, error / tolerance);
        // Written so that NaN breaks it.
        if (!(error <= tolerance) && broken.Count < 10)
            broken.Add(string.Create(CultureInfo.InvariantCulture, $"{where}: error {error:G6}, tolerance {tolerance:G6}"));
    }

    /// <summary>Compares two numbers.</summary>
    public void Compare(double expected, double actual, double tolerance) => Add(actual - expected, tolerance);

    /// <summary>Compares two angles in degrees round the circle.</summary>
    public void CompareAngles(double expected, double actual, double tolerance) => Add(Math.IEEERemainder(actual - expected, 360), tolerance);

    /// <summary>Compares numbers of mixed units, each with its own bound: the error is kept as a share of it.</summary>
    public void CompareShare(double expected, double actual, double tolerance) => Add((actual - expected) / tolerance, 1);

    /// <summary>The same for angles in degrees round the circle.</summary>
    public void CompareShareOfAngle(double expected, double actual, double tolerance) =>
        Add(Math.IEEERemainder(actual - expected, 360) / tolerance, 1);

    /// <summary>Counts a case in which either answer is right.</summary>
    public void Excuse() => Excused++;

    /// <summary>Records a plain contradiction.</summary>
    public void Fail(string message)
    {
        if (broken.Count < 10) broken.Add($"{where}: {message}");
    }
}
