using System.Globalization;
using Foreshore.Trials;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
var asked = Asked.Read(args);
var trial = asked?.Trial switch
{
    "kills" => (Func<Asked, Task<bool>>)KillTrial.RunAsync,
    "frozen" => FrozenTrial.RunAsync,
    "disk-full" => DiskTrial.RunAsync,
    "memory" => MemoryTrial.RunAsync,
    _ => null,
};
if (asked is null || trial is null)
{
    Console.Error.WriteLine("trials kills|frozen|disk-full|memory [--seed N] [--writers N] [--site N] [--database N] [--folder DIR] [--keep]");
    return 2;
}

using (asked)
{
    Console.WriteLine($"{asked.Trial}, seed {asked.Seed}, {asked.Writers} writers, in {asked.Folder}");
    return await trial(asked) ? 0 : 1;
}
