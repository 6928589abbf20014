namespace Pipeline.Abstractions;

/// <summary>
/// What a step does to the surfaces it touches, in the few words that surfaces and rules understand.
/// A verb is made of deeds; no plugin adds kinds of deed.
/// </summary>
public abstract record Deed
{
    private protected abstract void Closed();

    /// <summary>Work on the bare or filled piece.</summary>
    /// <param name="What">Which work.</param>
    /// <param name="Settles">How long until it is dry or set; null if at once.</param>
    /// <param name="Carrier">How climate changes that time.</param>
    public sealed record Prepare(Preparation What, DryingRange? Settles = null, Carrier Carrier = Carrier.None) : Deed
    {
        /// <summary>What it is done with, in the painter's words: <c>epoxy putty</c>, <c>soapy water</c>; null if nothing needs saying.</summary>
        public string? With { get; init; }

        /// <summary>How long until it can be sanded, where that is later than <see cref="Settles"/>.</summary>
        public DryingRange? Sandable { get; init; }

        /// <summary>The glue, if parts are stuck together.</summary>
        public Glue? Glue { get; init; }

        /// <summary>The faces of the joint, if the file says.</summary>
        public JointFaces? Faces { get; init; }

        /// <summary>The joint is pinned.</summary>
        public bool IsPinned { get; init; }

        /// <summary>The joint bears weight or sticks out far.</summary>
        public bool IsLoaded { get; init; }

        /// <summary>Moving air carries the glue's vapour away from finished surfaces.</summary>
        public bool HasAirflow { get; init; }

        /// <summary>The liquid the piece is washed in; null for dry work.</summary>
        public Liquid? Liquid { get; init; }

        /// <summary>In an ultrasonic bath.</summary>
        public bool IsUltrasonic { get; init; }

        /// <summary>Sanded, cut or drilled wet (true) or dry (false); null if the file does not say.</summary>
        public bool? IsWet { get; init; }

        /// <summary>True if the file, not the trade, says how long it takes to settle.</summary>
        public bool IsFromFile { get; init; }

        private protected override void Closed() { }
    }

    /// <summary>Joins parts of the model; hidden areas can no longer be reached.</summary>
    /// <param name="Parts">The parts joined.</param>
    /// <param name="Hides">Areas the join hides.</param>
    /// <param name="Settles">How long until the joint can be handled.</param>
    /// <param name="Carrier">How climate changes that time.</param>
    public sealed record Join(Sequence<string> Parts, Sequence<string> Hides, DryingRange? Settles, Carrier Carrier) : Deed
    {
        /// <summary>The glue; null for parts that only fit together.</summary>
        public Glue? Glue { get; init; }

        /// <summary>The faces of the joint, if the file says.</summary>
        public JointFaces? Faces { get; init; }

        /// <summary>The joint is pinned.</summary>
        public bool IsPinned { get; init; }

        /// <summary>The joint bears weight or sticks out far.</summary>
        public bool IsLoaded { get; init; }

        /// <summary>Moving air carries the glue's vapour away from finished surfaces.</summary>
        public bool HasAirflow { get; init; }

        /// <summary>True if the file, not the trade, says how long it takes to settle.</summary>
        public bool IsFromFile { get; init; }

        private protected override void Closed() { }
    }

    /// <summary>Lays something that dries: sealer, undercoat, colour, effect, varnish, texture.</summary>
    /// <param name="Layer">The layer each touched area gets; its step index is filled in by the walk.</param>
    /// <param name="OversprayMeant">Areas that overspray may reach because the painter means it; <c>all</c> for every one.</param>
    public sealed record Lay(Layer Layer, Sequence<string> OversprayMeant = default) : Deed
    {
        private protected override void Closed() { }
    }

    /// <summary>Puts a mask on.</summary>
    /// <param name="Mask">Its name.</param>
    /// <param name="Material">What it is made of.</param>
    /// <param name="Over">Name of the mask it is meant to lie over, or null.</param>
    public sealed record PutMaskOn(string Mask, MaskMaterial Material, string? Over = null) : Deed
    {
        private protected override void Closed() { }
    }

    /// <summary>Takes a mask off.</summary>
    public sealed record TakeMaskOff(string Mask) : Deed
    {
        private protected override void Closed() { }
    }

    /// <summary>Reworks an effect while it can still be moved.</summary>
    /// <param name="With">What it is cleaned back with.</param>
    /// <param name="Dissolves">What that liquid is.</param>
    public sealed record CleanBack(string With, Carrier Dissolves) : Deed
    {
        /// <summary>The liquid, if it is one the program knows.</summary>
        public Liquid? Liquid { get; init; }

        /// <summary>The technique whose layer is meant, wherever it lies (a chipping medium under its coat); null for the effect on top.</summary>
        public Technique? Of { get; init; }

        private protected override void Closed() { }
    }

    /// <summary>Softens the decals on the areas so that they settle.</summary>
    public sealed record SoftenDecal() : Deed
    {
        private protected override void Closed() { }
    }

    /// <summary>Takes everything off down to the bare material.</summary>
    /// <param name="With">What it is stripped with.</param>
    /// <param name="Dissolves">What that liquid is.</param>
    public sealed record Strip(string With, Carrier Dissolves) : Deed
    {
        /// <summary>The liquid; null if the coat is sanded off dry.</summary>
        public Liquid? Liquid { get; init; }

        /// <summary>In an ultrasonic bath.</summary>
        public bool IsUltrasonic { get; init; }

        /// <summary>How long the piece stays damp afterwards; null if it does not.</summary>
        public DryingRange? Settles { get; init; }

        /// <summary>True if the file, not the trade, says how long it takes to settle.</summary>
        public bool IsFromFile { get; init; }

        private protected override void Closed() { }
    }

    /// <summary>Waits until the top of the areas has reached a state.</summary>
    public sealed record Await(DryingState State) : Deed
    {
        /// <summary>Drying is forced at this temperature of the air; null if it is left to the bench.</summary>
        public Temperature? Heat { get; init; }

        private protected override void Closed() { }
    }

    /// <summary>Waits a given time.</summary>
    public sealed record Rest(Drying Time) : Deed
    {
        /// <summary>Drying is forced at this temperature of the air; null if it is left to the bench.</summary>
        public Temperature? Heat { get; init; }

        private protected override void Closed() { }
    }

    /// <summary>Handles the piece without changing it: photographs, records, packs.</summary>
    public sealed record Handle() : Deed
    {
        private protected override void Closed() { }
    }
}
