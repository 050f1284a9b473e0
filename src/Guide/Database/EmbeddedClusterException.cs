using Foreshore.Guide.Hosting;

namespace Foreshore.Guide.Database;

/// <summary>The embedded PostgreSQL could not be brought up; says what is wrong and what to do.</summary>
public sealed class EmbeddedClusterException(string what, string todo, Exception? cause = null) : OperatorException(what, todo, cause);
