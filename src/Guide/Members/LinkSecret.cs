using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Foreshore.Guide.Members;

/// <summary>What makes a link worth something: 256 random bits, of which only the hash is kept. Whoever reads the database cannot use it.</summary>
public static class LinkSecret
{
    private const int Bytes = 32;

    public static (string Token, byte[] Hash) New()
    {
        var token = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));
        return (token, HashOf(token));
    }

    public static byte[] HashOf(string token) => SHA256.HashData(Encoding.UTF8.GetBytes(token));
}
