using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using NodaTime;

namespace Foreshore.Guide.Keeping;

/// <summary>
/// What an object holds alone, bytes, counted field by field as a 64-bit runtime lays it out (ECMA-335 leaves the layout open; heads
/// of 16, arrays and strings of 24 and 22 bytes are those of CoreCLR). What everybody shares – zones, cultures, types, the
/// rows a drawing was made from – is left out.
/// </summary>
internal static class MemoryHeld
{
    private const int Head = 16, ArrayHead = 24, StringHead = 22, Reference = 8;

    public static long By(object root, params Type[] shared)
    {
        var seen = new HashSet<object>(ReferenceEqualityComparer.Instance);
        var open = new Stack<object>([root]);
        var bytes = 0L;
        while (open.TryPop(out var node))
        {
            if (node is Type or Delegate or DateTimeZone or CalendarSystem or CultureInfo or MemberInfo || shared.Contains(node.GetType()) || !seen.Add(node))
                continue;
            bytes += node switch
            {
                string text => Rounded(StringHead + text.Length * sizeof(char)),
                Array array => Rounded(ArrayHead + array.Length * SizeOf(array.GetType().GetElementType()!)),
                _ => Rounded(Head + Fields(node.GetType()).Sum(field => (long)SizeOf(field.FieldType))),
            };
            Follow(node, open);
        }

        return bytes;
    }

    private static void Follow(object node, Stack<object> open)
    {
        if (node is string)
            return;
        if (node is Array array)
        {
            if (RefersOn(array.GetType().GetElementType()!))
                foreach (var item in array)
                    Push(item, open);
            return;
        }
        foreach (var field in Fields(node.GetType()).Where(field => RefersOn(field.FieldType)))
            Push(field.GetValue(node), open);
    }

    private static void Push(object? value, Stack<object> open)
    {
        if (value is null)
            return;
        // A struct's own bytes are counted where it lies; only what it refers to is followed.
        if (value.GetType().IsValueType)
            foreach (var field in Fields(value.GetType()).Where(field => RefersOn(field.FieldType)))
                Push(field.GetValue(value), open);
        else
            open.Push(value);
    }

    private static bool RefersOn(Type type) => !type.IsPrimitive && !type.IsEnum && !type.IsPointer && (!type.IsValueType || Fields(type).Any(field => RefersOn(field.FieldType)));

    private static int SizeOf(Type type) => !type.IsValueType ? Reference
        : (int)typeof(Unsafe).GetMethod(nameof(Unsafe.SizeOf))!.MakeGenericMethod(type).Invoke(null, null)!;

    private static long Rounded(long bytes) => (bytes + 7) / 8 * 8;

    private static IEnumerable<FieldInfo> Fields(Type type)
    {
        for (var each = type; each is not null && each != typeof(object) && each != typeof(ValueType); each = each.BaseType)
            foreach (var field in each.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
                yield return field;
    }
}
