using CsCheck;

namespace Foreshore.Almanac;

/// <summary>Picks among values that are worth trying by themselves.</summary>
internal static class Some
{
    internal static Gen<double> Of(params double[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);
}
