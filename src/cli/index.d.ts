export declare const g = 9.80665;
