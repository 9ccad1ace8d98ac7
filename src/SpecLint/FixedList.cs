using System.Collections;
using System.Runtime.CompilerServices;

namespace SpecLint;

/// <summary>
/// A list that never changes. The rules walk the lists of every recipe hundreds of times: unlike an interface, this type
/// gives a loop its items without a call or an object for each walk.
/// </summary>
/// <typeparam name="T">What it holds.</typeparam>
[CollectionBuilder(typeof(FixedList), nameof(FixedList.Of))]
public sealed class FixedList<T> : IReadOnlyList<T>
{
    private readonly T[] items;

    internal FixedList(T[] items) => this.items = items;

    /// <summary>The list without items.</summary>
    internal static FixedList<T> Empty { get; } = new([]);

    /// <summary>Number of items.</summary>
    public int Count => items.Length;

    /// <summary>An item by its place, from 0.</summary>
    /// <exception cref="IndexOutOfRangeException">There is no such place.</exception>
    public T this[int index] => items[index];

    /// <summary>Walks the items.</summary>
    public Enumerator GetEnumerator() => new(items);

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();

    /// <summary>A list that takes an array over: nobody may write to the array from then on.</summary>
    public static implicit operator FixedList<T>(T[] array) => array.Length == 0 ? Empty : new(array);

    /// <summary>A walk through the items.</summary>
    public struct Enumerator
    {
        private readonly T[] items;
        private int at;

        internal Enumerator(T[] items)
        {
            this.items = items;
            at = -1;
        }

        /// <summary>The item that the walk has come to.</summary>
        public readonly T Current => items[at];

        /// <summary>Goes on to the next item; false where there is none.</summary>
        public bool MoveNext() => ++at < items.Length;
    }
}

/// <summary>Makes lists that never change.</summary>
public static class FixedList
{
    /// <summary>A list of some items.</summary>
    public static FixedList<T> Of<T>(ReadOnlySpan<T> items) => items.Length == 0 ? FixedList<T>.Empty : new(items.ToArray());

    /// <summary>A list of the items that another holds now.</summary>
    public static FixedList<T> Of<T>(List<T> items) => items.Count == 0 ? FixedList<T>.Empty : new(items.ToArray());
}
