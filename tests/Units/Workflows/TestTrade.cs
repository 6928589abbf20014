using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>A small trade of a few verbs, so that these tests ask the binder and nothing else.</summary>
internal static class TestTrade
{
    public static Family Acrylic { get; } = Made("waterborne acrylic", Carrier.Water, DryingRange.Hours(12, 24));

    public static Family Lacquer { get; } = Made("acrylic lacquer", Carrier.Solvent, DryingRange.Hours(2, 6));

    public static Family Enamel { get; } = Made("enamel", Carrier.Spirit, DryingRange.Hours(48, 72)) with { PotLife = Drying.Hours(1) };

    public static Trade Trade { get; } = new()
    {
        Verbs =
        [
            new Brought<Verb>("test", new CleanVerb()),
            new Brought<Verb>("test", new CoatVerb()),
            new Brought<Verb>("test", new EverythingVerb()),
            new Brought<Verb>("test", new GlueVerb()),
            new Brought<Verb>("test", new JoinVerb()),
            new Brought<Verb>("test", new MaskVerb()),
            new Brought<Verb>("test", new RimVerb()),
            new Brought<Verb>("test", new SoftenVerb()),
            new Brought<Verb>("faulty", new ThrowingVerb()),
            new Brought<Verb>("test", new UnmaskVerb()),
            new Brought<Verb>("faulty", new UnsayableVerb()),
        ],
        Rules = [new Brought<Rule>("test", new MaskTooLong())],
        Families = [new Brought<Family>("test", Acrylic), new Brought<Family>("test", Lacquer), new Brought<Family>("test", Enamel)],
        Materials =
        [
            new Brought<Material>("test", new Material { Name = "resin", AlsoCalled = ["polyurethane resin"], Source = "common practice" }),
            new Brought<Material>("test", new Material { Name = "fibreboard", IsPorous = true, Source = "common practice" }),
        ],
        MaskMaterials =
        [
            new Brought<MaskMaterial>("test", new MaskMaterial { Name = "liquid mask", Kind = MaskKind.Liquid, Needs = DryingState.Cured, TimeOn = Drying.Hours(24), Source = "common practice" }),
            new Brought<MaskMaterial>("test", new MaskMaterial { Name = "low-tack tape", Kind = MaskKind.Tape, Needs = DryingState.MaskSafe, TimeOn = Drying.Hours(24), Source = "common practice" }),
        ],
    };

    private static Family Made(string name, Carrier carrier, DryingRange maskSafe)
    {
        var table = new DryingTable(DryingRange.Minutes(5, 15), DryingRange.Minutes(15, 30), DryingRange.Hours(1, 2), maskSafe, DryingRange.Hours(24, 48), DryingRange.Days(3, 7));
        return new Family { Name = name, Carrier = carrier, Thin = table, Heavy = table, Source = "common practice" };
    }

    public sealed record Covering([Says("What is laid.")] Paint With, Method By = Method.Brush, int Coats = 1, Sequence<string> Overspray = default);

    public sealed class CoatVerb : Verb<Covering>
    {
        public override string Name => "coat";

        public override string Summary => "Lays colour.";

        public override StepKind Kind => StepKind.Coat;

        protected override Intent Intend(Job job, Covering particulars)
        {
            if (particulars.Coats == 0)
                throw new ParticularException("coats", "No coats at all leave the area as it is; write 1 or more.");
            var layer = Layer.Of(particulars.With, LayerRole.Colour, particulars.By, Layer.UsualBody(particulars.By), particulars.Coats);
            return new Intent([new Deed.Lay(layer, particulars.Overspray)], new Work { PerUnit = new Attended(job.Size.SquareCentimetres), NeedsDryingPlace = true });
        }
    }

    public sealed class CleanVerb : Verb<NoParticulars>
    {
        public override string Name => "clean";

        public override string Summary => "Washes the piece.";

        public override StepKind Kind => StepKind.Preparation;

        protected override Intent Intend(Job job, NoParticulars particulars) => new([new Deed.Prepare(Preparation.Washed)], new Work { PerUnit = new Attended(6), Together = true });
    }

    public sealed record Gluing([Says("The glue.")] Glue Using = Glue.Superglue);

    public sealed class GlueVerb : Verb<Gluing>
    {
        public override string Name => "glue";

        public override string Summary => "Glues the piece together.";

        public override StepKind Kind => StepKind.Preparation;

        protected override Intent Intend(Job job, Gluing particulars) => new([new Deed.Prepare(Preparation.Glued, DryingRange.Hours(2, 4))], new Work());
    }

    public sealed class JoinVerb : Verb<NoParticulars>
    {
        public override string Name => "join";

        public override string Summary => "Joins parts.";

        public override StepKind Kind => StepKind.Preparation;

        public override Target Target => Target.Parts;

        protected override Intent Intend(Job job, NoParticulars particulars) => new([new Deed.Join(job.Named, [], null, Carrier.None)], new Work());
    }

    public sealed record Masking(MaskMaterial Using, MaskName? Over = null);

    public sealed class MaskVerb : Verb<Masking>
    {
        public override string Name => "mask";

        public override string Summary => "Covers areas.";

        public override StepKind Kind => StepKind.Masking;

        protected override Intent Intend(Job job, Masking particulars) => new([new Deed.PutMaskOn(job.As, particulars.Using, particulars.Over?.Name)], new Work());
    }

    public sealed class UnmaskVerb : Verb<NoParticulars>
    {
        public override string Name => "unmask";

        public override string Summary => "Takes masks off.";

        public override StepKind Kind => StepKind.Removal;

        public override Target Target => Target.Masks;

        protected override Intent Intend(Job job, NoParticulars particulars) => new(job.Named.Select(Deed (mask) => new Deed.TakeMaskOff(mask)).ToSequence(), new Work());
    }

    public sealed class RimVerb : Verb<Covering>
    {
        public override string Name => "rim";

        public override string Summary => "Paints the rim.";

        public override StepKind Kind => StepKind.Coat;

        protected override Intent Intend(Job job, Covering particulars) => new([], new Work());
    }

    public sealed record Softening(string With = "softener");

    public sealed class SoftenVerb : Verb<Softening>
    {
        public override string Name => "soften";

        public override string Summary => "Settles decals.";

        public override StepKind Kind => StepKind.Coat;

        protected override Intent Intend(Job job, Softening particulars) => new([new Deed.SoftenDecal()], new Work { Tool = particulars.With });
    }

    /// <summary>Has a key of every kind that a particular can have.</summary>
    public sealed record Everything(
        [Says("Any text.")] string Text = "",
        int Whole = 3,
        double Number = 1.5,
        bool WetInWet = false,
        Sheen? Sheen = null,
        Liquid Liquid = Liquid.Water,
        DryingState Until = DryingState.MaskSafe,
        Attended? Busy = null,
        Drying? Rest = null,
        DryingRange? Sets = null,
        SurfaceSize? Size = null,
        Volume? Volume = null,
        Share? Share = null,
        Temperature? Warmth = null,
        Paint? Paint = null,
        MaskMaterial? Mask = null,
        AreaNames? Clear = null,
        MaskName? Over = null,
        Sequence<Paint> Paints = default,
        Sequence<double> Numbers = default);

    public sealed class EverythingVerb : Verb<Everything>
    {
        public override string Name => "everything";

        public override string Summary => "Has a key of every kind.";

        public override StepKind Kind => StepKind.Preparation;

        /// <summary>The particulars it was last asked about on this thread.</summary>
        [ThreadStatic]
        private static Everything? last;

        public static Everything? Last => last;

        protected override Intent Intend(Job job, Everything particulars)
        {
            last = particulars;
            return new Intent([new Deed.Handle()], new Work());
        }
    }

    public sealed class ThrowingVerb : Verb<NoParticulars>
    {
        public override string Name => "throwing";

        public override string Summary => "Fails.";

        public override StepKind Kind => StepKind.Preparation;

        protected override Intent Intend(Job job, NoParticulars particulars) => throw new InvalidOperationException("the plugin's own mistake\nwith a second line");
    }

    public sealed record Unsayable(DateTime When);

    public sealed class UnsayableVerb : Verb<Unsayable>
    {
        public override string Name => "unsayable";

        public override string Summary => "Has a key of a type that no file can say.";

        public override StepKind Kind => StepKind.Preparation;

        protected override Intent Intend(Job job, Unsayable particulars) => new([], new Work());
    }

    public sealed class MaskTooLong : Rule
    {
        public override string Name => "mask-too-long";

        public override string Summary => "A mask comes off in time.";

        public override string Source => "common practice";
    }
}
