using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using Npgsql;

namespace Foreshore.Guide.Database;

/// <summary>
/// Ends this process's connections to a server that is frozen. The driver itself first asks the server to cancel, and waits for it: with
/// a server that answers nothing a page would hang until both time-outs have passed. Linux keeps a process's sockets in /proc; elsewhere
/// the time-outs remain.
/// </summary>
internal static class StuckConnections
{
    private const string Sockets = "/proc/self/fd";
    private const int BothWays = 2;
    private const int LongestAddress = 128;

    /// <param name="peers">The server's addresses, from <see cref="PeersOfAsync"/>: asked for while all is well, since a name may not be found when it is not.</param>
    public static int Break(IReadOnlyList<byte[]> peers)
    {
        if (!Directory.Exists(Sockets) || peers.Count == 0)
            return 0;

        var broken = 0;
        foreach (var entry in Directory.EnumerateFiles(Sockets))
        {
            // Closed by its owner in the meantime, or no socket: then it has no peer.
            var number = int.Parse(Path.GetFileName(entry), CultureInfo.InvariantCulture);
            var address = new byte[LongestAddress];
            var length = address.Length;
            if (getpeername(number, address, ref length) == 0 && peers.Any(peer => address.AsSpan(0, Math.Min(length, address.Length)).StartsWith(peer)) && shutdown(number, BothWays) == 0)
                broken++;
        }

        return broken;
    }

    /// <summary>The addresses of the server as the system writes them: family, then path or port and number.</summary>
    public static async Task<IReadOnlyList<byte[]>> PeersOfAsync(NpgsqlConnectionStringBuilder server, CancellationToken stop)
    {
        if (server.Host is not { Length: > 0 } host)
            return [];
        if (host.StartsWith('/'))
            return [Bytes(new UnixDomainSocketEndPoint(string.Create(CultureInfo.InvariantCulture, $"{host}/.s.PGSQL.{server.Port}")))];
        try
        {
            return [.. (await Dns.GetHostAddressesAsync(host, stop)).Select(address => Bytes(new IPEndPoint(address, server.Port)))];
        }
        catch (SocketException)
        {
            return [];
        }
    }

    private static byte[] Bytes(EndPoint end)
    {
        var written = end.Serialize();
        // Of an address by number: family, port and the number itself; what follows is padding or scope.
        var size = end is IPEndPoint { AddressFamily: AddressFamily.InterNetwork } ? 8 : end is IPEndPoint ? 24 : written.Size;
        return written.Buffer.Span[..size].ToArray();
    }

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int getpeername(int socket, byte[] address, ref int length);

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int shutdown(int socket, int how);
}
