namespace Pipeline.Abstractions;

/// <summary>What the value beside a verb names.</summary>
public enum Target
{
    /// <summary>Areas, or parts standing for all their areas, or <c>all</c>.</summary>
    Areas,

    /// <summary>Masks by their <c>as</c> names, or areas standing for the masks on them.</summary>
    Masks,

    /// <summary>Parts of the model.</summary>
    Parts,
}

/// <summary>
/// A step type. Derive from <see cref="Verb{TParticulars}"/>; a sealed, public class with a public constructor without
/// parameters is found by the engine in the plugin's assembly.
/// </summary>
public abstract class Verb
{
    private protected Verb() { }

    /// <summary>The word in the file, in lower case: <c>undercoat</c>, <c>clean-back</c>.</summary>
    public abstract string Name { get; }

    /// <summary>One sentence in the painter's words: what the step does.</summary>
    public abstract string Summary { get; }

    /// <summary>Which of the four kinds of step it is.</summary>
    public abstract StepKind Kind { get; }

    /// <summary>What the value beside the verb names.</summary>
    public virtual Target Target => Target.Areas;

    /// <summary>The record whose constructor parameters are the verb's own keys in the file.</summary>
    public abstract Type ParticularsType { get; }

    /// <summary>What the step means for a model, given its particulars. Pure; called with a <see cref="ParticularsType"/>.</summary>
    public abstract Intent Intend(Job job, object particulars);
}

/// <summary>A step type with its particulars.</summary>
/// <typeparam name="TParticulars">
/// A record. Each parameter of its first public constructor is a key of the step in the file, written in kebab case
/// (<c>int Coats</c> is <c>coats</c>; <c>bool WetInWet</c> is <c>wet-in-wet</c>). A parameter without a default value is required.
/// Types: <c>string</c>, <c>int</c>, <c>double</c>, <c>bool</c>, any enum of the contract or the plugin, <see cref="Attended"/>, <see cref="Drying"/>,
/// <see cref="DryingRange"/>, <see cref="SurfaceSize"/>, <see cref="Volume"/>, <see cref="Share"/>, <see cref="Temperature"/>,
/// <see cref="Paint"/>, <see cref="MaskMaterial"/>, <see cref="AreaNames"/>, <see cref="MaskName"/>, nullable forms of these, and <see cref="Sequence{T}"/> of them.
/// </typeparam>
public abstract class Verb<TParticulars> : Verb
    where TParticulars : class
{
    /// <inheritdoc/>
    public sealed override Type ParticularsType => typeof(TParticulars);

    /// <inheritdoc/>
    public sealed override Intent Intend(Job job, object particulars) => Intend(job, (TParticulars)particulars);

    /// <summary>What the step means for a model, given its particulars. Pure.</summary>
    /// <exception cref="ParticularException">A particular has a value that makes no sense; becomes an error at its place in the file.</exception>
    protected abstract Intent Intend(Job job, TParticulars particulars);
}

/// <summary>For verbs without keys of their own.</summary>
public sealed record NoParticulars;

/// <summary>Says what a key of a step means, for the workflow reference and the JSON Schema.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class SaysAttribute(string meaning) : Attribute
{
    /// <summary>One sentence.</summary>
    public string Meaning { get; } = meaning;
}

/// <summary>Names of areas of the model; <c>all</c> has been resolved.</summary>
public sealed record AreaNames(Sequence<string> Names);

/// <summary>The name of a mask of the same route.</summary>
public sealed record MaskName(string Name);

/// <summary>A particular whose value makes no sense for the verb. The message says what would.</summary>
public sealed class ParticularException : Exception
{
    /// <summary>For the key and what is wrong with it.</summary>
    public ParticularException(string particular, string message)
        : base(message) => Particular = particular;

    /// <summary>Without a key.</summary>
    public ParticularException()
        : this("", "")
    {
    }

    /// <summary>Without a key.</summary>
    public ParticularException(string message)
        : this("", message)
    {
    }

    /// <summary>Without a key.</summary>
    public ParticularException(string message, Exception innerException)
        : base(message, innerException) => Particular = "";

    /// <summary>The key as written in the file; empty for the step itself.</summary>
    public string Particular { get; }
}

/// <summary>What a verb means for one step: its deeds in order, its work, and the cautions to show.</summary>
public sealed record Intent(Sequence<Deed> Deeds, Work Work)
{
    /// <summary>The usual cautions of the step.</summary>
    public Sequence<Caution> Cautions { get; init; }
}
