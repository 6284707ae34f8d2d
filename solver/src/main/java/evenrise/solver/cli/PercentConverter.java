package evenrise.solver.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A number of percent, with or without its sign. */
final class PercentConverter implements ITypeConverter<Double> {
    @Override
    public Double convert(String value) {
        String number = value.strip();
        number = number.endsWith("%") ? number.substring(0, number.length() - 1).strip() : number;
        try {
            return Double.valueOf(number);
        } catch (NumberFormatException e) {
            throw new TypeConversionException("'" + value + "' is no number of percent, such as 2 or 0.5%");
        }
    }
}
