using System.Reflection;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>One of a verb's own keys.</summary>
/// <param name="Name">In kebab case.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="IsList">True if it can hold several.</param>
/// <param name="IsNeeded">True if it must be there.</param>
/// <param name="Default">What holds if it is not.</param>
/// <param name="Means">What it means, or null if the plugin does not say.</param>
internal sealed record Particular(string Name, ParticularKind Kind, bool IsList, bool IsNeeded, object? Default, string? Means);

/// <summary>A verb with its own keys, read from the plugin once.</summary>
internal sealed class VerbForm
{
    private readonly ConstructorInvoker? construct;

    private VerbForm(string plugin, Verb verb, string name)
    {
        (Plugin, Verb, Name) = (plugin, verb, name);
        try
        {
            (Summary, Kind, Target) = (verb.Summary, verb.Kind, verb.Target);
            if (verb.ParticularsType.GetConstructors() is not [var constructor, ..])
            {
                Broken = "its particulars have no public constructor";
                return;
            }

            construct = ConstructorInvoker.Create(constructor);
            Particulars = [.. constructor.GetParameters().Select(Read)];
        }
#pragma warning disable CA1031 // whatever a plugin throws must not end the program
        catch (Exception mistake)
#pragma warning restore CA1031
        {
            Broken = mistake is TargetInvocationException { InnerException: { } inner } ? inner.Message : mistake.Message;
        }
    }

    public string Plugin { get; }

    public Verb Verb { get; }

    public string Name { get; }

    public string Summary { get; } = "";

    public StepKind Kind { get; }

    public Target Target { get; }

    public IReadOnlyList<Particular> Particulars { get; } = [];

    /// <summary>Why the plugin's verb cannot be used, or null.</summary>
    public string? Broken { get; }

    /// <summary>Null if the verb cannot even say its name.</summary>
    public static VerbForm? Of(Brought<Verb> brought)
    {
        try
        {
            return brought.Item.Name is { Length: > 0 } name ? new VerbForm(brought.Plugin, brought.Item, name) : null;
        }
#pragma warning disable CA1031 // whatever a plugin throws must not end the program
        catch (Exception)
#pragma warning restore CA1031
        {
            return null;
        }
    }

    /// <summary>The verb's own key of a name, or null.</summary>
    public int IndexOf(string key)
    {
        for (var i = 0; i < Particulars.Count; i++)
        {
            if (Particulars[i].Name == key)
                return i;
        }

        return -1;
    }

    /// <summary>The record of the particulars, with defaults where no value is given.</summary>
    public object Construct(object?[] values) => construct!.Invoke(values.AsSpan());

    private static Particular Read(ParameterInfo parameter)
    {
        var type = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
        var isList = type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Sequence<>);
        if (isList)
            type = type.GetGenericArguments()[0];
        var kind = ParticularKind.OfType(type) ?? throw new NotSupportedException($"its particular ‘{parameter.Name}’ is of the type {type.Name}, which a file cannot say");
        return new Particular(
            WordText.Kebab(parameter.Name!),
            kind,
            isList,
            !parameter.HasDefaultValue,
            DefaultOf(parameter),
            parameter.GetCustomAttribute<SaysAttribute>()?.Meaning);
    }

    private static object? DefaultOf(ParameterInfo parameter)
    {
        if (!parameter.HasDefaultValue)
            return null;
        var type = parameter.ParameterType;
        var underlying = Nullable.GetUnderlyingType(type);
        if (parameter.DefaultValue is { } value)
            return (underlying ?? type) is { IsEnum: true } choice ? Enum.ToObject(choice, value) : value;
        return type.IsValueType && underlying is null ? Activator.CreateInstance(type) : null;
    }
}

/// <summary>The verbs in use, by name.</summary>
internal sealed class VerbForms
{
    private readonly Dictionary<string, VerbForm> byName = new(StringComparer.Ordinal);

    public VerbForms(Trade trade)
    {
        foreach (var brought in trade.Verbs)
        {
            if (VerbForm.Of(brought) is { } form)
                byName.TryAdd(form.Name, form);
        }

        Names = [.. byName.Keys.Order(StringComparer.Ordinal)];
    }

    /// <summary>In ordinal order.</summary>
    public IReadOnlyList<string> Names { get; }

    public VerbForm? Named(string name) => byName.GetValueOrDefault(name);
}
