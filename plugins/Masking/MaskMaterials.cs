using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking;

/// <summary>
/// What there is to mask with. Where the trade gives a range for the time on, the longer figure stands here: nobody is warned too early.
/// </summary>
public sealed class MaskMaterials : Catalogue<MaskMaterial>
{
    private const string CommonPractice = "common practice";

    /// <inheritdoc/>
    public override IEnumerable<MaskMaterial> Entries =>
    [
        new()
        {
            Name = "low-tack tape",
            AlsoCalled = ["low-tack paper tape"],
            Kind = MaskKind.Tape,
            Needs = DryingState.MaskSafe,
            TimeOn = Drying.Hours(24),
            Source = CommonPractice,
        },
        new()
        {
            Name = "standard tape",
            AlsoCalled = ["masking tape", "paper tape", "standard paper tape"],
            Kind = MaskKind.Tape,
            Needs = DryingState.Cured,
            IsStrongTack = true,
            TimeOn = Drying.Hours(24),
            Source = CommonPractice,
        },
        new()
        {
            Name = "flexible tape",
            AlsoCalled = ["vinyl tape", "flex tape"],
            Kind = MaskKind.Tape,
            Needs = DryingState.MaskSafe,
            TimeOn = Drying.Hours(24),
            Source = CommonPractice,
        },
        new()
        {
            Name = "cut film",
            AlsoCalled = ["film", "masking film", "stencil film"],
            Kind = MaskKind.Film,
            Needs = DryingState.MaskSafe,
            TimeOn = Drying.Hours(48),
            Source = CommonPractice,
        },
        new()
        {
            Name = "liquid mask",
            AlsoCalled = ["masking fluid", "liquid masking"],
            Kind = MaskKind.Liquid,
            Needs = DryingState.Cured,
            TimeOn = Drying.Hours(24),
            HardLimit = Drying.Hours(48),
            Sets = DryingRange.Minutes(20, 40),
            Source = CommonPractice,
        },
        new()
        {
            Name = "putty",
            AlsoCalled = ["masking putty"],
            Kind = MaskKind.Putty,
            Needs = DryingState.Handleable,
            TimeOn = Drying.Hours(12),
            Source = CommonPractice,
        },
        new()
        {
            Name = "cover",
            AlsoCalled = ["foam cover", "paper cover"],
            Kind = MaskKind.Cover,
            Needs = DryingState.TouchDry,
            // laid on, not stuck down
            TimeOn = null,
            Source = CommonPractice,
        },
    ];
}
