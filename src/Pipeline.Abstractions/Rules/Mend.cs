namespace Pipeline.Abstractions;

/// <summary>
/// A change to a route that puts a finding right, in the words of a route. Steps go by the places of their verbs
/// (<see cref="Step.Place"/>); whoever makes the change finds the text there, and makes none where it cannot be made faithfully.
/// A rule offers one only where there is one thing to do and it is sure.
/// </summary>
public abstract record Mend
{
    private protected abstract void Closed();

    /// <summary>A new step straight before one that is there.</summary>
    public sealed record PutBefore(Place Step, NewStep New) : Mend
    {
        private protected override void Closed() { }
    }

    /// <summary>A new step straight after one that is there.</summary>
    public sealed record PutAfter(Place Step, NewStep New) : Mend
    {
        private protected override void Closed() { }
    }

    /// <summary>A step moves straight before another of the same route or scheme.</summary>
    public sealed record MoveBefore(Place Step, Place Other) : Mend
    {
        private protected override void Closed() { }
    }

    /// <summary>A step moves straight after another of the same route or scheme.</summary>
    public sealed record MoveAfter(Place Step, Place Other) : Mend
    {
        private protected override void Closed() { }
    }

    /// <summary>A key of a step gets a value, whether it has the key already or not.</summary>
    public sealed record SetKey(Place Step, string Key, string Value) : Mend
    {
        private protected override void Closed() { }
    }

    /// <summary>A step goes.</summary>
    public sealed record TakeOut(Place Step) : Mend
    {
        private protected override void Closed() { }
    }

    /// <summary>Another name stands at a place: what a mistyped one was meant to be.</summary>
    public sealed record Rename(Place At, string Name) : Mend
    {
        private protected override void Closed() { }
    }
}

/// <summary>A step to be written into a route.</summary>
/// <param name="Verb">Its verb.</param>
/// <param name="On">What it acts on.</param>
/// <param name="Particulars">Its other keys, in the order in which they are written.</param>
public sealed record NewStep(string Verb, Acting On, Sequence<Particular> Particulars = default);

/// <summary>A key of a step and its value, as they are written.</summary>
public sealed record Particular(string Key, string Value);

/// <summary>
/// What a new step acts on. In a scheme names are placeholders, and one place there speaks for every following of it; so it is said by
/// what is there.
/// </summary>
public abstract record Acting
{
    private protected abstract void Closed();

    /// <summary>The areas of the finding; in a scheme, what the step at the finding names.</summary>
    public sealed record TheAreas : Acting
    {
        private protected override void Closed() { }
    }

    /// <summary>Every area of the model.</summary>
    public sealed record All : Acting
    {
        private protected override void Closed() { }
    }

    /// <summary>The mask that a step puts on.</summary>
    public sealed record MaskOf(Place Step) : Acting
    {
        private protected override void Closed() { }
    }
}
