using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Pipeline.Abstractions;

/// <summary>
/// An immutable list that equals another with equal items in the same order. The default value is the empty list.
/// </summary>
[CollectionBuilder(typeof(Sequence), nameof(Sequence.Create))]
public readonly struct Sequence<T> : IReadOnlyList<T>, IEquatable<Sequence<T>>
{
    private readonly ImmutableArray<T> items;

    internal Sequence(ImmutableArray<T> items) => this.items = items;

    private ImmutableArray<T> Items => items.IsDefault ? [] : items;

    /// <inheritdoc/>
    public int Count => Items.Length;

    /// <summary>True if there is nothing in it.</summary>
    public bool IsEmpty => Items.IsEmpty;

    /// <inheritdoc/>
    public T this[int index] => Items[index];

    /// <summary>This list with one more item at its end.</summary>
    public Sequence<T> With(T item) => new(Items.Add(item));

    /// <summary>This list without the items that match.</summary>
    public Sequence<T> Without(Predicate<T> match) => new(Items.RemoveAll(match));

    /// <inheritdoc/>
    public bool Equals(Sequence<T> other) => Items.SequenceEqual(other.Items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Sequence<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in Items)
            hash.Add(item);
        return hash.ToHashCode();
    }

    /// <summary>Equal items in the same order.</summary>
    public static bool operator ==(Sequence<T> left, Sequence<T> right) => left.Equals(right);

    /// <summary>Not equal items in the same order.</summary>
    public static bool operator !=(Sequence<T> left, Sequence<T> right) => !left.Equals(right);

    /// <summary>Walks the items without a heap allocation.</summary>
    public ImmutableArray<T>.Enumerator GetEnumerator() => Items.GetEnumerator();

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => ((IEnumerable<T>)Items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable)Items).GetEnumerator();

    /// <summary>The items, parted by commas.</summary>
    public override string ToString() => string.Join(", ", Items);
}

/// <summary>Makes sequences.</summary>
public static class Sequence
{
    /// <summary>A sequence of the items; what a collection expression calls.</summary>
    public static Sequence<T> Create<T>(ReadOnlySpan<T> items) => new([.. items]);

    /// <summary>A sequence of the items of a list.</summary>
    public static Sequence<T> ToSequence<T>(this IEnumerable<T> items) => new([.. items]);
}
