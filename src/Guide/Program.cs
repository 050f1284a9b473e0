using System.Globalization;
using Foreshore.Guide.Hosting;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

return await Verbs.RunAsync(args);

/// <summary>The composition root; public so that tests can start the real host.</summary>
public partial class Program;
