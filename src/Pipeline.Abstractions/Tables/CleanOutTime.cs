namespace Pipeline.Abstractions;

/// <summary>What is done to a spraying tool between two loads, or before and after a sitting.</summary>
public enum ToolChange
{
    /// <summary>The clean tool is got out and made ready, once before its first load of a sitting.</summary>
    GetReady,

    /// <summary>A darker paint of the same kind follows.</summary>
    LightToDark,

    /// <summary>A lighter paint of the same kind follows.</summary>
    DarkToLight,

    /// <summary>A paint of another kind follows.</summary>
    FamilyChange,

    /// <summary>Something follows metal: the tool is stripped.</summary>
    AfterMetallic,

    /// <summary>The tool is put away.</summary>
    EndOfSitting,
}

/// <summary>A row of the table of tool clean-outs: attended minutes. Of two rows about the same change the later counts.</summary>
/// <param name="Change">What is done.</param>
/// <param name="Low">The least it takes.</param>
/// <param name="High">The most it takes, no less than <paramref name="Low"/>.</param>
/// <param name="Source">Where the row comes from; <c>common practice</c> where nobody published it.</param>
public sealed record CleanOutTime(ToolChange Change, Attended Low, Attended High, string Source)
{
    /// <summary>The middle of the range: what plans count with.</summary>
    public Attended Usual => new((Low.Minutes + High.Minutes) / 2);
}
