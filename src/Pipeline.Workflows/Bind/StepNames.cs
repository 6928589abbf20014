using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>What the names in a step mean where the step stands: in a model's route, or in a scheme not yet followed.</summary>
internal abstract class StepNames(Desk desk, Shelf shelf)
{
    public Desk Desk => desk;

    public Shelf Shelf => shelf;

    /// <summary>The areas a node names; null and a finding if it names none.</summary>
    public abstract AreaNames? Areas(SyntaxNode node);

    /// <summary>The paint or mix a node names; null and a finding if there is none.</summary>
    public abstract Paint? Paint(SyntaxNode node);

    /// <summary>The mask a node names; null and a finding if there is none.</summary>
    public abstract MaskName? Mask(SyntaxNode node);

    /// <summary>Free text, in which a scheme's placeholder for a paint stands for the paint's name.</summary>
    public abstract string? Text(SyntaxNode node);

    public MaskMaterial? MaskMaterial(SyntaxNode node)
    {
        if (desk.Text(node, "what to mask with") is not { } name)
            return null;
        if (shelf.MaskMaterial(name) is { } material)
            return material;
        desk.UnknownName(node, name, "mask material", shelf.MaskMaterialNames, "No plugin brought anything to mask with.");
        return null;
    }

    /// <summary>A paint of the file by its name.</summary>
    protected Paint? PaintOfFile(SyntaxNode node, string name)
    {
        if (shelf.Paint(name) is { } paint)
            return paint;
        if (!shelf.IsBroken(name))
            desk.UnknownName(node, name, "paint or mix", shelf.PaintNames, "The file names no paint; add it under ‘paints’.");
        return null;
    }
}
