package evenrise.solver.engine.search;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/** Where one load sits and what switches it; either is null while the load has found no room. */
@PlanningEntity
public class LoadPlacement {
    private int load;

    @PlanningVariable(valueRangeProviderRefs = "places", nullable = true)
    private Place place;

    @PlanningVariable(valueRangeProviderRefs = "outputs", nullable = true)
    private Output output;

    LoadPlacement() {}

    LoadPlacement(int load, Place place, Output output) {
        this.load = load;
        this.place = place;
        this.output = output;
    }

    int load() {
        return load;
    }

    Place getPlace() {
        return place;
    }

    void setPlace(Place place) {
        this.place = place;
    }

    Output getOutput() {
        return output;
    }

    void setOutput(Output output) {
        this.output = output;
    }
}
