package evenrise.model.electrical;

import evenrise.model.project.Phase;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What one load asks of a node.
 *
 * @param envelope of each pole
 * @param phases that its poles touch
 * @param onSeconds nominal switch-on time; empty for what draws its base always
 */
public record Draw(InrushEnvelope envelope, List<Phase> phases, OptionalDouble onSeconds) {}
