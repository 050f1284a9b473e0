using System.Collections;
using System.Reflection;

namespace Foreshore.Guide.Demo;

/// <summary>Every value that an object of the guide holds, however deep, from its fields: nothing can hide behind a property.</summary>
internal static class ObjectGraph
{
    public static IEnumerable<object> Leaves(object? node, HashSet<object> seen) => Named(node, "", seen).Select(leaf => leaf.Value);

    public static IEnumerable<(string Path, object Value)> Named(object? node, string path, HashSet<object> seen)
    {
        if (node is null)
            yield break;
        if (node is string or Enum or double or int or Guid)
        {
            yield return (path, node);
            yield break;
        }
        if (node is IEnumerable many)
        {
            foreach (var item in many)
                foreach (var found in Named(item, path, seen))
                    yield return found;
            yield break;
        }
        var type = node.GetType();
        if (type.Namespace?.StartsWith("Foreshore", StringComparison.Ordinal) != true || (!type.IsValueType && !seen.Add(node)))
            yield break;
        foreach (var field in type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic))
            foreach (var found in Named(field.GetValue(node), $"{path}.{field.Name}", seen))
                yield return found;
    }
}
