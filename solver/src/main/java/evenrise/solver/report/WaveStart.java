package evenrise.solver.report;

import evenrise.model.observation.InrushFit;
import evenrise.model.project.Phase;
import java.util.OptionalDouble;

/**
 * What a wave shows of one load's start on one phase.
 *
 * @param planSeconds by the plan's clock
 * @param statedPeakAmps empty where the project states no inrush
 */
public record WaveStart(
        String load,
        Phase phase,
        double planSeconds,
        InrushFit fit,
        OptionalDouble statedPeakAmps,
        double statedHalfMillis) {}
