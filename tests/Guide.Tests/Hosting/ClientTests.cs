using System.Net;
using Xunit;

namespace Foreshore.Guide.Hosting;

public class ClientTests
{
    [Theory]
    [InlineData("198.51.100.7", "198.51.100.200", false, true)]
    [InlineData("198.51.100.7", "198.51.101.7", false, false)]
    [InlineData("198.51.100.7", "::ffff:198.51.100.7", true, true)]
    [InlineData("2001:db8:0:1::1", "2001:db8:0:1:ffff::2", true, true)]
    [InlineData("2001:db8:0:1::1", "2001:db8:0:2::1", false, true)]
    [InlineData("2001:db8:0:1::1", "2001:db8:0:100::1", false, false)]
    public void A_machine_is_one_and_so_is_its_network(string first, string second, bool isOneMachine, bool isOneNetwork)
    {
        var (a, b) = (IPAddress.Parse(first), IPAddress.Parse(second));
        Assert.Equal(isOneMachine, Client.Of(a) == Client.Of(b));
        Assert.Equal(isOneNetwork, Client.NetworkOf(a) == Client.NetworkOf(b));
    }
}
