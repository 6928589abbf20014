using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>One entry of a route as the file gives it: its keys are understood, its names are not yet things.</summary>
/// <param name="Key">The verb's key, or <c>follow</c>.</param>
internal abstract record RouteItem(TextNode Key)
{
    private protected abstract void Closed();

    /// <summary>Its own name (<c>as</c>), if it has one.</summary>
    public string? As { get; set; }

    /// <summary>Where that stands.</summary>
    public TextNode? AsNode { get; set; }

    /// <summary>Names of steps that must be done before.</summary>
    public Sequence<SyntaxNode> After { get; set; }

    /// <summary>Rules silenced for it.</summary>
    public Sequence<Silence> Silences { get; set; }

    /// <summary>Follows a scheme, its placeholders bound.</summary>
    public sealed record Follow(TextNode Key, string Scheme, SyntaxNode SchemeNode, MappingNode Mapping, List<Entry> Bindings) : RouteItem(Key)
    {
        private protected override void Closed() { }
    }

    /// <summary>An entry without a verb that can be used. Its name is kept, so that naming it elsewhere is no second mistake.</summary>
    public sealed record Unusable(TextNode Key) : RouteItem(Key)
    {
        private protected override void Closed() { }
    }

    /// <summary>A step of its own.</summary>
    public sealed record Step(TextNode Key, SyntaxNode Target, VerbForm Verb) : RouteItem(Key)
    {
        /// <summary>The verb's own keys that are given, at their index among its particulars.</summary>
        public Entry?[] Own { get; } = new Entry?[Verb.Particulars.Count];

        public LocalDateTime? At { get; set; }

        public Place? AtPlace { get; set; }

        public Attended? Minutes { get; set; }

        public Attended? SetUp { get; set; }

        public Attended? PutAway { get; set; }

        public bool? Together { get; set; }

        public Drying? Unattended { get; set; }

        /// <summary>The node of <c>drying</c>, if given.</summary>
        public SyntaxNode? DryingNode { get; set; }

        /// <summary>Its times, if it is a mapping of states.</summary>
        public List<LabelTime> Drying { get; set; } = [];

        /// <summary>Its time, if it is a single one.</summary>
        public DryingRange? SingleTime { get; set; }

        public string? Note { get; set; }

        /// <summary>The air it is done in, if that is not the bench's.</summary>
        public Climate? Climate { get; set; }

        public Protection Protection { get; set; } = Protection.Unsaid;

        /// <summary>How many fillings of the cup, if given.</summary>
        public int? Loads { get; set; }

        public ToolCleaning CleanedOut { get; set; }

        public Pace? Pace { get; set; }

        /// <summary>The place or machine of the bench it stands in.</summary>
        public string? StandsIn { get; set; }

        /// <summary>True if the file gives any attended time.</summary>
        public bool HasTimes => Minutes is not null || SetUp is not null || PutAway is not null;

        private protected override void Closed() { }
    }
}
