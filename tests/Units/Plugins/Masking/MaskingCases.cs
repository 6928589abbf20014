using Pipeline.Abstractions;
using Pipeline.Plugins.Masking;
using static Pipeline.Tests.Units.Plugins.Bench;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Masks on and off.</summary>
internal static class MaskingCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        new("mask: all, using: low-tack tape, as: bands", new Mask(), new MaskingOff(MaskOf("low-tack tape")), Figures.Named("bands"),
            "mask bands of low-tack tape", "7.6 min, set up 2/2"),
        new("mask: all, using: cut film, over: bands, as: stencil",
            new Mask(), new MaskingOff(MaskOf("cut film"), new MaskName("bands")), Figures.Named("stencil"),
            "mask stencil of cut film over bands", "6 min, set up 2/2"),
        new("mask: all, using: liquid mask, as: fittings", new Mask(), new MaskingOff(MaskOf("liquid mask")), Figures.Named("fittings"),
            "mask fittings of liquid mask", "3 min, set up 1/2"),
        new("mask: all, using: putty, as: edge", new Mask(), new MaskingOff(MaskOf("putty")), Figures.Named("edge"),
            "mask edge of putty", "2.4 min, set up 1/2"),
        new("mask: all, using: cover, as: bag", new Mask(), new MaskingOff(MaskOf("cover")), Figures.Named("bag"),
            "mask bag of cover", "1.6 min, set up 1/2"),
        new("unmask: [bands, stencil]", new Unmask(), new NoParticulars(), Figures with { Named = ["bands", "stencil"] },
            "takes off bands; takes off stencil", "2.5 min"),
    ];
}
