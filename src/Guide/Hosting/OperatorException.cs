namespace Foreshore.Guide.Hosting;

/// <summary>Something the person who runs the site can put right. Printed as words at start, never as a stack trace.</summary>
public class OperatorException(string what, string todo, Exception? cause = null) : Exception($"{what} {todo}", cause)
{
    public string What { get; } = what;
    public string Todo { get; } = todo;
}

/// <summary>A setting whose value cannot be used.</summary>
public sealed class SettingException(string setting, string fault, string todo)
    : OperatorException($"The setting {setting} cannot be used: {fault}.", todo);
