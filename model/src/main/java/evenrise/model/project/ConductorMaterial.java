package evenrise.model.project;

public enum ConductorMaterial {
    COPPER,
    ALUMINIUM
}
