package evenrise.model.scatter;

/**
 * One percentile of what was drawn, in the unit of its quantity.
 *
 * @param percent such as 95: this part of the trials stayed at or below
 * @param least lower end of its confidence interval
 * @param most upper end
 */
public record Percentile(double percent, double value, double least, double most) {}
