using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Elevation;

/// <summary>
/// Ground heights that an admin brought, whole in one row: what is in the database is in its backups, and a file is there
/// or is not. Samples are packed: differences along each row, deflated.
/// </summary>
public sealed class ElevationFile
{
    private ElevationFile() { }

    public ElevationFile(string name, ElevationGrid grid, Instant addedAt)
    {
        Name = Require.Text(name, 120, "The file's name");
        AddedAt = addedAt;
        (NorthDegrees, WestDegrees, LatitudeStepDegrees, LongitudeStepDegrees) = (grid.NorthDegrees, grid.WestDegrees, grid.LatitudeStepDegrees, grid.LongitudeStepDegrees);
        (SouthDegrees, EastDegrees) = (grid.SouthDegrees, grid.EastDegrees);
        (Columns, Rows, MetresPerUnit, VoidCount) = (grid.Columns, grid.Rows, grid.MetresPerUnit, grid.VoidCount);
        HighestMetres = grid.HighestMetres ?? 0;
        Packed = Pack(grid);
    }

    public int Id { get; private set; }

    public string Name { get; private set; } = "";

    public Instant AddedAt { get; private set; }

    public double NorthDegrees { get; private set; }

    public double SouthDegrees { get; private set; }

    public double WestDegrees { get; private set; }

    public double EastDegrees { get; private set; }

    public double LatitudeStepDegrees { get; private set; }

    public double LongitudeStepDegrees { get; private set; }

    public int Columns { get; private set; }

    public int Rows { get; private set; }

    public double MetresPerUnit { get; private set; }

    public int VoidCount { get; private set; }

    public double HighestMetres { get; private set; }

    public byte[] Packed { get; private set; } = [];

    public ElevationGrid ToGrid()
    {
        var samples = new short[Columns * Rows];
        using var inflated = new ZLibStream(new MemoryStream(Packed), CompressionMode.Decompress);
        inflated.ReadExactly(MemoryMarshal.AsBytes(samples.AsSpan()));
        for (var row = 0; row < Rows; row++)
        {
            short before = 0;
            foreach (ref var sample in samples.AsSpan(row * Columns, Columns))
            {
                if (!BitConverter.IsLittleEndian) sample = BinaryPrimitives.ReverseEndianness(sample);
                before = sample = unchecked((short)(sample + before));
            }
        }

        return new ElevationGrid(NorthDegrees, WestDegrees, LatitudeStepDegrees, LongitudeStepDegrees, Columns, Rows, samples, MetresPerUnit);
    }

    private static byte[] Pack(ElevationGrid grid)
    {
        var differences = new byte[2 * grid.Samples.Length];
        short before = 0;
        for (var i = 0; i < grid.Samples.Length; i++)
        {
            if (i % grid.Columns == 0) before = 0;
            BinaryPrimitives.WriteInt16LittleEndian(differences.AsSpan(2 * i), unchecked((short)(grid.Samples[i] - before)));
            before = grid.Samples[i];
        }

        using var packed = new MemoryStream();
        using (var deflated = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
            deflated.Write(differences);
        return packed.ToArray();
    }
}
