namespace Pipeline.Abstractions;

/// <summary>What parts are stuck together with.</summary>
public enum Glue
{
    /// <summary>Cyanoacrylate. Bonds resin and metal; frosts gloss in still air; dissolves expanded foam.</summary>
    Superglue,

    /// <summary>Cyanoacrylate made not to attack expanded foam, usually low in odour as well.</summary>
    FoamSafeSuperglue,

    /// <summary>White wood glue. Needs at least one porous face.</summary>
    Pva,

    /// <summary>Two-part epoxy.</summary>
    Epoxy,

    /// <summary>Solvent cement that welds styrene and nothing else.</summary>
    StyreneCement,
}

/// <summary>What the faces of a joint look like when the glue goes on.</summary>
public enum JointFaces
{
    /// <summary>Masked during painting or scraped back to the material.</summary>
    Bare,

    /// <summary>Under paint or varnish.</summary>
    Painted,
}
