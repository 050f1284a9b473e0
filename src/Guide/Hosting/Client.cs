using System.Net;
using System.Net.Sockets;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// Who counts as one where tries and requests are counted. Behind a proxy it is the visitor's address only where the proxy is named
/// (<see cref="NamedProxies"/>): else anybody could write one of their own.
/// </summary>
internal static class Client
{
    private const int BytesOfSubnet = 8;
    private const int BytesOfSite = 7;
    private const int BytesOfNetwork = 3;

    /// <summary>One machine: an IPv4 address; of IPv6 the subnet of 64 bits, within which a machine changes its address at will (RFC 8981).</summary>
    public static string Of(HttpContext http) => Of(http.Connection.RemoteIpAddress);

    public static string Of(IPAddress? address) => Plain(address) is not { } plain ? "unknown"
        : plain.AddressFamily == AddressFamily.InterNetwork ? plain.ToString() : First(plain, BytesOfSubnet);

    /// <summary>One household, office or cell: 24 bits of IPv4 (common practice), 56 of IPv6, as much as a home is given (RFC 6177).</summary>
    public static string NetworkOf(IPAddress? address) => Plain(address) is not { } plain ? "unknown"
        : First(plain, plain.AddressFamily == AddressFamily.InterNetwork ? BytesOfNetwork : BytesOfSite);

    private static IPAddress? Plain(IPAddress? address) => address?.IsIPv4MappedToIPv6 == true ? address.MapToIPv4() : address;

    private static string First(IPAddress address, int bytes) => $"{Convert.ToHexStringLower(address.GetAddressBytes()[..bytes])}/{bytes * 8}";
}
