namespace Pipeline.Abstractions;

/// <summary>Where a model stands.</summary>
public enum LifecycleState
{
    /// <summary>As it came from the frame or printer.</summary>
    Bare,

    /// <summary>Cleaned and made ready for paint.</summary>
    Prepared,

    /// <summary>Carries at least an undercoat.</summary>
    Coated,

    /// <summary>At least one mask is on.</summary>
    Masked,

    /// <summary>The last thing laid is a varnish.</summary>
    Sealed,

    /// <summary>The route has been walked to its end with nothing left masked.</summary>
    Finished,
}

/// <summary>What the lifecycle made of a step.</summary>
/// <param name="Before">The state before it.</param>
/// <param name="After">The state after it; the same if the step was refused.</param>
/// <param name="Refusal">Why the state does not permit the step, or null if it does.</param>
public sealed record Passage(LifecycleState Before, LifecycleState After, string? Refusal = null);
