namespace SpecLint.Science;

/// <summary>
/// How far a model is from measurement, as data, so that the range of a result can include it: about two
/// standard errors to each side hold 95 %.
/// </summary>
/// <param name="StandardError">One standard error (root mean square of the deviations), in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit; "1" with <paramref name="Relative"/> for a share of the value.</param>
/// <param name="Relative">True when the error is a share of the value.</param>
/// <param name="Measured">How the figure was measured: the tables, their points, or the judgement it rests on.</param>
public readonly record struct ModelError(double StandardError, string Unit, bool Relative, string Measured);
