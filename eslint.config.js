import tseslint from 'typescript-eslint';
import { noReckoning } from './tools/lint/no-reckoning.js';

/** What a room of the house may not know: the arrows run main → rooms → commands → core, and never back. */
const mayNotImport = (files, rooms, message, more = []) => ({
  files,
  rules: {
    'no-restricted-imports': [
      'error',
      { patterns: [...rooms.map((room) => ({ group: [room], message })), ...more] },
    ],
  },
});

const wholeZod = {
  selector: 'ImportDeclaration[importKind="value"][source.value="zod"] > ImportSpecifier',
  message:
    'Write import * as z: the other way all of zod goes into the bundle, and every start waits for it.',
};

const bareTable = {
  selector:
    ':matches(Program, ExportNamedDeclaration) > VariableDeclaration > VariableDeclarator > TSAsExpression[typeAnnotation.typeName.name="const"] > ObjectExpression',
  message:
    'Say what a table holds: declare its type, or write `as const satisfies …` where its own keys or values are types.',
};

export default tseslint.config(
  { ignores: ['dist', 'dist-*', 'coverage', 'node_modules', 'data'] },
  {
    files: ['**/*.ts'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      // Cutting text at code points is what is meant here: no half characters.
      '@typescript-eslint/no-misused-spread': 'off',
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
    },
  },
  mayNotImport(
    ['src/core/**/*.ts'],
    [
      '**/chat/**',
      '**/rooms/**',
      '**/projects/**',
      '**/pictures/**',
      '**/paper/**',
      '**/commands/**',
      'node:*',
      'discord.js',
      'pino',
      'zod',
    ],
    'The core knows the craft and nothing else.',
  ),
  mayNotImport(
    ['src/standards/**/*.ts'],
    [
      '**/core/**',
      '**/chat/**',
      '**/rooms/**',
      '**/projects/**',
      '**/pictures/**',
      '**/paper/**',
      '**/commands/**',
      'node:*',
    ],
    'Tables are data.',
  ),
  mayNotImport(
    ['src/lessons/**/*.ts'],
    [
      '**/chat/**',
      '**/rooms/**',
      '**/projects/**',
      '**/pictures/**',
      '**/commands/**',
      'node:*',
      'discord.js',
    ],
    'A lesson is the craft and its words; it knows no room, and nothing that is saved.',
  ),
  mayNotImport(
    ['src/projects/**/*.ts'],
    ['**/chat/**', '**/rooms/**', '**/pictures/**', '**/paper/**', '**/commands/**', 'discord.js'],
    'What is saved knows no chat.',
  ),
  mayNotImport(
    ['src/pictures/**/*.ts'],
    ['**/chat/**', '**/rooms/**', '**/projects/**', '**/paper/**', '**/commands/**', 'discord.js'],
    'Pictures are drawn from the core.',
  ),
  mayNotImport(
    ['src/paper/**/*.ts'],
    ['**/chat/**', '**/rooms/**', '**/projects/**', '**/commands/**', 'discord.js'],
    'Paper is printed from what it is handed.',
  ),
  mayNotImport(
    ['src/chat/**/*.ts'],
    ['**/rooms/**', '**/commands/**', '**/pictures/**', 'discord.js', 'node:*'],
    'Both rooms share the chat.',
  ),
  mayNotImport(
    ['src/asked/**/*.ts'],
    ['**/rooms/**', '**/commands/**', '**/pictures/**', 'discord.js', 'node:*'],
    'Plain words are read by what the registry declares, whichever room they come from.',
  ),
  mayNotImport(['commands/**/*.ts'], ['**/rooms/**', 'discord.js', 'node:*'], 'Commands know no room.', [
    {
      regex: '^\\.\\./(?!shared/|\\.\\./|src/|index)',
      message: 'What commands share lives in commands/shared/.',
    },
  ]),
  mayNotImport(
    ['src/rooms/terminal/**/*.ts'],
    ['**/rooms/discord/**', 'discord.js'],
    'One room does not know the other.',
  ),
  mayNotImport(['src/rooms/discord/**/*.ts'], ['**/rooms/terminal/**'], 'One room does not know the other.'),
  {
    files: ['src/**/*.ts', 'commands/**/*.ts'],
    rules: { 'no-restricted-syntax': ['error', wholeZod, bareTable] },
  },
  {
    files: [
      'src/core/**/*.ts',
      'src/standards/**/*.ts',
      'src/chat/**/*.ts',
      'src/asked/**/*.ts',
      'src/lessons/**/*.ts',
      'commands/**/*.ts',
      'src/pictures/**/*.ts',
    ],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Chance is handed in.' },
        { object: 'Date', property: 'now', message: 'The moment is handed in.' },
      ],
      'no-restricted-syntax': [
        'error',
        wholeZod,
        bareTable,
        {
          selector: 'NewExpression[callee.name="Date"][arguments.length=0]',
          message: 'The moment is handed in.',
        },
      ],
    },
  },
  {
    files: ['commands/**/*.ts'],
    plugins: { house: { rules: { 'no-reckoning': noReckoning } } },
    rules: { 'house/no-reckoning': 'error' },
  },
  {
    // Tests assert on shapes they know.
    files: ['test/**/*.ts', 'bench/**/*.ts', 'tools/**/*.ts'],
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
    },
  },
);
