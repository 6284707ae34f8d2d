package evenrise.model.validation;

import java.util.ArrayList;
import java.util.List;

/** Collects the checks of one part of the table. */
abstract class CheckList {
    final List<Check> checks = new ArrayList<>();

    final void number(
            String section,
            String quantity,
            String inputs,
            double expected,
            double tolerance,
            String unit,
            double ours,
            String source) {
        checks.add(Check.number(section, quantity, inputs, expected, tolerance, unit, ours, source));
    }
}
