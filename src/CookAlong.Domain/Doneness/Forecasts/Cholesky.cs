namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>A symmetric, positive matrix as a lower triangle times itself turned over.</summary>
sealed class Cholesky
{
    readonly double[,] lower;
    readonly int size;

    public Cholesky(double[,] matrix)
    {
        size = matrix.GetLength(0);
        lower = new double[size, size];
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column <= row; column++)
            {
                var sum = matrix[row, column];
                for (var k = 0; k < column; k++)
                {
                    sum -= lower[row, k] * lower[column, k];
                }

                lower[row, column] = row == column ? Math.Sqrt(sum) : sum / lower[column, column];
            }
        }
    }

    public double[] Solve(double[] right)
    {
        var solved = (double[])right.Clone();
        for (var row = 0; row < size; row++)
        {
            for (var k = 0; k < row; k++)
            {
                solved[row] -= lower[row, k] * solved[k];
            }

            solved[row] /= lower[row, row];
        }

        return SolveTurned(solved);
    }

    /// <summary>Of independent normal numbers, normal numbers whose precision is the matrix.</summary>
    public double[] SolveTurned(double[] right)
    {
        var solved = (double[])right.Clone();
        for (var row = size - 1; row >= 0; row--)
        {
            for (var k = row + 1; k < size; k++)
            {
                solved[row] -= lower[k, row] * solved[k];
            }

            solved[row] /= lower[row, row];
        }

        return solved;
    }
}
