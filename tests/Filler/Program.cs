using Foreshore.Filler;
using Foreshore.Guide.Database;
using Microsoft.Extensions.Configuration;

// Fills an empty database with a club's guide after years of use: dotnet run -c Release --project tests/Filler -- --help
const string usage = """
    filler [--times N] [--years N] [--seed N] [--Database:Directory=DIR | --ConnectionStrings:Guide=…]

      --times N   the demo's coast so many times over: 1, 10 or 40 (15, 150, 600 places)
      --years N   years of notes, closures, proposals, revisions, log and sessions: 3 unless given
      --seed N    which of the many like it: 1 unless given; the same seed fills the same

    The database must be empty. Nothing of this is for a site that anybody uses.
    """;

if (args is ["--help"])
{
    Console.WriteLine(usage);
    return 0;
}

var settings = new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(args).Build();
var asked = Asked.Read(settings);
if (asked.Fault is { } fault)
{
    Console.Error.WriteLine($"{fault}\n{usage}");
    return 2;
}

await using var server = await GuideServer.OpenAsync(settings);
await server.MigrateAsync();
if (!await Coast.FillAsync(server.AppConnection, asked))
{
    Console.Error.WriteLine("filler: the database is not empty. Give another folder, or empty that one with \"foreshore reset\".");
    return 1;
}

foreach (var (table, rows) in await Years.FillAsync(server.AppConnection, asked))
    Console.WriteLine($"{table,-20}{rows,10}");
return 0;
