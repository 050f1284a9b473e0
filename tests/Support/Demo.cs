namespace Foreshore.Guide.Support;

/// <summary>Loads the demo guide as of the tests' own time.</summary>
internal static class Demo
{
    public static Task LoadAsync(string appConnection) =>
        throw new NotSupportedException($"The demo guide is not part of this build yet ({appConnection.Length}).");
}
