using System.Globalization;
using Foreshore.Guide.Hosting;
using Foreshore.Guide.Shell.Maps;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

var builder = WebApplication.CreateBuilder(args);
builder.AddSite(builder.Configuration.GetConnectionString("Guide") ?? "");

var app = builder.Build();
app.UseSite();
app.MapCoastline();
app.Run();

/// <summary>The composition root; public so that tests can start the real host.</summary>
public partial class Program;
