var builder = WebApplication.CreateBuilder(args);
var app = builder.Build();

app.Run();

/// <summary>The composition root; public so that tests can start the real host.</summary>
public partial class Program;
