package evenrise.solver.document;

import evenrise.model.project.Load;

/** A load that states too little for its peak. */
public record UnstatedLoad(Load load, boolean isInrushUnstated, boolean isWaveformUnstated, boolean isGuessed) {
    boolean isAny() {
        return isInrushUnstated || isWaveformUnstated || isGuessed;
    }
}
