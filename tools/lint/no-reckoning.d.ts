import type { Rule } from 'eslint';

export declare const noReckoning: Rule.RuleModule;
