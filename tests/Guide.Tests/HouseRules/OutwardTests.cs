using System.Text.RegularExpressions;
using Xunit;

namespace Foreshore.Guide.HouseRules;

/// <summary>Whom the site talks to, and what its modules and its kept rows may be: rules of docs/security.md that are about the code itself.</summary>
public partial class OutwardTests
{
    /// <summary>
    /// The files that open connections, each to what a setting names: the database (by its driver, and to end what hangs), the site itself
    /// (health, and its first pages after a start), the mail server. Nothing typed becomes an address.
    /// </summary>
    private static readonly string[] Callers = ["src/Guide/Database/StuckConnections.cs", "src/Guide/Hosting/SelfCheck.cs", "src/Guide/Hosting/Warming.cs", "src/Guide/Mail/Postbox.cs"];

    [Fact]
    public void Only_what_is_set_is_asked()
    {
        var found = SourceTree.Files("src", ".cs", ".razor").Where(file => Connects().IsMatch(File.ReadAllText(file))).Select(SourceTree.Relative);

        Assert.Equal(Callers, found.Order());
    }

    /// <summary>A key that somebody chose, written into an ordinary object, could be __proto__: such objects are made without one.</summary>
    [Fact]
    public void Modules_write_chosen_keys_into_objects_without_a_prototype()
    {
        var found =
            from file in SourceTree.Files("wwwroot", ".js", ".mjs")
            let text = File.ReadAllText(file)
            from Match match in ChosenKey().Matches(text)
            where !Regex.IsMatch(text, $@"\bconst {match.Groups[1].Value} = (?:Object\.create\(null\)|new (?:Float|Uint|Int)\w+|\[\])")
            select $"{SourceTree.Relative(file)}: {match.Value}";

        Assert.Empty(found);
        Assert.DoesNotContain(SourceTree.Files("wwwroot", ".js", ".mjs"), file => File.ReadAllText(file).Contains("__proto__", StringComparison.Ordinal));
    }

    /// <summary>Every table has its level in docs/security.md, and every level there says how it is kept.</summary>
    [Fact]
    public void Every_table_has_its_level_of_protection()
    {
        var page = File.ReadAllText(Path.Combine(SourceTree.Root, "docs/security.md"));
        using var db = Database.GuideConnection.Open("Host=/nowhere;Database=none");
        var tables = db.Model.GetEntityTypes().Select(entity => Microsoft.EntityFrameworkCore.RelationalEntityTypeExtensions.GetTableName(entity)).OfType<string>().Distinct();

        Assert.DoesNotContain(tables, table => !page.Contains($"`{table}`", StringComparison.Ordinal));
    }

    [GeneratedRegex(@"\b(?:HttpClient|SocketsHttpHandler|HttpWebRequest|WebClient|TcpClient|UdpClient|SmtpClient|Dns|ClientWebSocket|new Socket|Ping)\b(?=[\s(.])")]
    private static partial Regex Connects();

    [GeneratedRegex(@"\b(\w+)\[[^\]""'0-9][^\]]*\]\s*(?:\?\?)?=[^=>]")]
    private static partial Regex ChosenKey();
}
